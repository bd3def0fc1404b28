// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.OptionalDouble;
import org.ohmstead.units.text.Messages;

/**
 * Reads one resistance as the trade writes it: 8R2, R47, 0R47, 4.7, 1k, 4K7, 10RJ, then perhaps a tolerance letter, then perhaps a rating
 * such as @50W. The first letter of K, M, G and T is the multiplier; one that follows a multiplier is the tolerance, as in IEC 60062.
 */
final class ResistanceText {
    private static final Messages TEXTS = Messages.of(ResistanceText.class);

    private static final String MULTIPLIERS = "RKMGT";
    private static final double[] FACTORS = {1, 1e3, 1e6, 1e9, 1e12};
    private static final int MOST_DIGITS = 30;

    private final String notation;
    private final int end;
    private int at;
    private OptionalDouble toleranceRatio = OptionalDouble.empty();
    private OptionalDouble ratedWatts = OptionalDouble.empty();

    /** What was read. */
    record Value(double ohms, OptionalDouble toleranceRatio, OptionalDouble ratedWatts) {}

    /** A fault in the meaning, not in the spelling: what was written is clearly meant as a resistance. */
    static final class Fault extends Exception {
        private static final long serialVersionUID = 1L;
        private final boolean meantAsValue;
        private final transient NotationException cause;

        Fault(boolean meantAsValue, NotationException cause) {
            super(cause);
            this.meantAsValue = meantAsValue;
            this.cause = cause;
        }

        boolean meantAsValue() {
            return meantAsValue;
        }

        NotationException said() {
            return cause;
        }
    }

    private ResistanceText(String notation, int start, int end) {
        this.notation = notation;
        this.at = start;
        this.end = end;
    }

    /** Reads notation[start, end). */
    static Value read(String notation, int start, int end) throws Fault {
        ResistanceText text = new ResistanceText(notation, start, end);
        double ohms = text.ohms();
        text.tolerance();
        text.rating();
        if (text.at < end) {
            throw text.unexpected();
        }
        if (!(ohms > 0)) {
            throw text.meaning(start, TEXTS.text("value.zero"), TEXTS.text("value.zeroRemedy"));
        }
        if (Double.isInfinite(ohms)) {
            throw text.meaning(
                    start, TEXTS.text("value.large"), TEXTS.text("value.largeRemedy", Integer.toString(MOST_DIGITS)));
        }
        return new Value(ohms, text.toleranceRatio, text.ratedWatts);
    }

    private double ohms() throws Fault {
        int start = at;
        refuseMinus();
        StringBuilder digits = new StringBuilder(digits());
        double factor = 1;
        boolean fraction = false;
        if (at < end && notation.charAt(at) == '.') {
            at++;
            fraction = true;
            digits.append('.').append(digits());
        }
        int multiplier = at < end ? multiplier(notation.charAt(at)) : -1;
        if (multiplier >= 0 && (digits.length() > 0 || nextIsDigit())) {
            at++;
            factor = FACTORS[multiplier];
            if (!fraction) {
                digits.append('.').append(digits());
            }
        }
        if (digits.chars().noneMatch(Character::isDigit)) {
            at = start;
            throw unexpected();
        }
        return Double.parseDouble("0" + digits) * factor;
    }

    private void refuseMinus() throws Fault {
        if (at < end && (notation.charAt(at) == '-' || notation.charAt(at) == '\u2212')) {
            String rest = at + 1 < end ? notation.substring(at + 1, end) : "4R7";
            String remedy = TEXTS.text("value.minusRemedy", rest);
            throw new Fault(nextIsDigit(), new NotationException(notation, at, TEXTS.text("value.minus"), remedy));
        }
    }

    private boolean nextIsDigit() {
        return at + 1 < end && isDigit(notation.charAt(at + 1));
    }

    private String digits() throws Fault {
        int start = at;
        while (at < end && isDigit(notation.charAt(at))) {
            at++;
        }
        if (at - start > MOST_DIGITS) {
            throw meaning(
                    start,
                    TEXTS.text("value.digits", Integer.toString(at - start)),
                    TEXTS.text("value.digitsRemedy", Integer.toString(MOST_DIGITS)));
        }
        return notation.substring(start, at);
    }

    private void tolerance() {
        if (at < end) {
            toleranceRatio = ToleranceLetter.ratio(notation.charAt(at));
            if (toleranceRatio.isPresent()) {
                at++;
            }
        }
    }

    private void rating() throws Fault {
        if (at >= end || notation.charAt(at) != '@') {
            return;
        }
        at++;
        int start = at;
        String whole = digits();
        if (at < end && notation.charAt(at) == '.') {
            at++;
            whole += "." + digits();
        }
        double watts = whole.chars().anyMatch(Character::isDigit) ? Double.parseDouble("0" + whole) : 0;
        if (!(watts > 0)) {
            throw meaning(start, TEXTS.text("value.rating"), TEXTS.text("value.ratingRemedy"));
        }
        if (at < end && Character.toUpperCase(notation.charAt(at)) == 'W') {
            at++;
        }
        ratedWatts = OptionalDouble.of(watts);
    }

    private Fault meaning(int position, String problem, String remedy) {
        return new Fault(true, new NotationException(notation, position, problem, remedy));
    }

    private Fault unexpected() {
        int point = at < end ? notation.codePointAt(at) : ' ';
        String what = at < end ? TEXTS.text("value.strange", Character.toString(point)) : TEXTS.text("value.missing");
        String remedy =
                switch (point) {
                    case ',' -> TEXTS.text("value.comma");
                    case 'm' -> TEXTS.text("value.milli");
                    default -> TEXTS.text("value.remedy", ToleranceLetter.LETTERS);
                };
        return new Fault(false, new NotationException(notation, at, what, remedy));
    }

    private static boolean isDigit(char letter) {
        return letter >= '0' && letter <= '9';
    }

    private static int multiplier(char letter) {
        return switch (letter) {
            case 'r', '\u03a9', '\u2126' -> 0;
            case 'k' -> 1;
            default -> MULTIPLIERS.indexOf(letter);
        };
    }
}
