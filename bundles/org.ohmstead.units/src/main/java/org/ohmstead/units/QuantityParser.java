// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units;

import java.math.BigInteger;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.units.text.Messages;

/**
 * Reads quantities written by people: "13.8 V", "4,7 kΩ", "4R7" and "1k5" (letter codes of IEC 60062), "0.5 ohm", "-0.1 dB", "20 ms",
 * "1e3 Hz". Point and comma both are decimal marks; there is no thousands separator. A missing unit means the one asked for.
 */
public final class QuantityParser {
    private static final Messages TEXTS = Messages.of(QuantityParser.class);
    private static final Pattern NUMBER = Pattern.compile("([+-]?(?:\\d+(?:[.,]\\d*)?|[.,]\\d+))(?:[eE]([+-]?\\d+))?");
    /**
     * Letter codes stand where the decimal mark would; R is the unit of resistance itself. IEC 60062 has L, R, K, M, G and T for
     * resistances, and no E, which therefore stands before a power of ten only.
     */
    private static final Pattern LETTER_CODE = Pattern.compile("([+-]?\\d*)([RrkKMGmuµμnpL])(\\d+)");

    /** Powers of ten. */
    private static final Map<String, Integer> PREFIXES = Map.ofEntries(
            Map.entry("p", -12),
            Map.entry("n", -9),
            Map.entry("u", -6),
            Map.entry("\u00b5", -6),
            Map.entry("\u03bc", -6),
            Map.entry("m", -3),
            Map.entry("", 0),
            Map.entry("k", 3),
            Map.entry("K", 3),
            Map.entry("M", 6),
            Map.entry("G", 9));

    private QuantityParser() {}

    /**
     * Reads a quantity.
     *
     * @param text what was written
     * @param expected the unit it must have, and has when none is written
     * @return the quantity in the unit itself, prefix worked in
     * @throws QuantityException when the text is empty, no number, in another unit, or followed by something else
     */
    public static Quantity parse(String text, Unit expected) throws QuantityException {
        String trimmed = text.strip();
        int start = text.indexOf(trimmed);
        if (trimmed.isEmpty()) {
            throw new QuantityException(
                    QuantityException.Reason.EMPTY, 0, TEXTS.text("refused.empty", example(expected)));
        }
        Matcher code = LETTER_CODE.matcher(trimmed);
        if (code.lookingAt() && letterFits(code.group(2), expected)) {
            return letterCode(trimmed, start, code, expected);
        }
        Matcher number = NUMBER.matcher(trimmed);
        if (!number.lookingAt()) {
            throw new QuantityException(
                    QuantityException.Reason.NO_NUMBER,
                    start,
                    TEXTS.text("refused.noNumber", trimmed, example(expected)));
        }
        String rest = trimmed.substring(number.end()).strip();
        int restStart = start + trimmed.length() - rest.length();
        double value = nearest(number.group(1).replace(',', '.'), number.group(2), exponent(rest, restStart, expected));
        return finite(value, trimmed, start, expected);
    }

    private static Quantity letterCode(String trimmed, int start, Matcher code, Unit expected)
            throws QuantityException {
        String whole = code.group(1).isEmpty() ? "0" : code.group(1);
        whole = whole.equals("-") || whole.equals("+") ? whole + "0" : whole;
        String letter = code.group(2);
        boolean bare = letter.equals("R") || letter.equals("r");
        int exponent = bare ? 0 : letter.equals("L") ? -3 : PREFIXES.get(letter);
        String rest = trimmed.substring(code.end()).strip();
        if (rest.equals("R") || !rest.isEmpty() && !symbols(expected).contains(rest)) {
            throw new QuantityException(
                    QuantityException.Reason.TRAILING_TEXT,
                    start + trimmed.length() - rest.length(),
                    TEXTS.text("refused.trailing", rest, trimmed, example(expected)));
        }
        return finite(nearest(whole + "." + code.group(3), null, exponent), trimmed, start, expected);
    }

    private static boolean letterFits(String letter, Unit expected) {
        boolean onlyOhms = "RrL".contains(letter);
        return onlyOhms
                ? expected == Unit.OHM
                : expected.takesPrefix() && !(letter.equals("m") && expected == Unit.OHM);
    }

    /** The double nearest to what was written: a product with the prefix would be off by a last bit, and print as such. */
    private static double nearest(String decimal, String exponent, int prefixExponent) {
        BigInteger written = exponent == null ? BigInteger.ZERO : new BigInteger(exponent);
        return Double.parseDouble(decimal + "e" + written.add(BigInteger.valueOf(prefixExponent)));
    }

    private static int exponent(String rest, int restStart, Unit expected) throws QuantityException {
        if (rest.isEmpty()) {
            return 0;
        }
        for (String symbol : symbols(expected)) {
            if (rest.equals(symbol)) {
                return 0;
            }
            if (expected.takesPrefix() && rest.endsWith(symbol)) {
                String prefix =
                        rest.substring(0, rest.length() - symbol.length()).strip();
                if (PREFIXES.containsKey(prefix)) {
                    return PREFIXES.get(prefix);
                }
            }
        }
        if (expected.takesPrefix() && PREFIXES.containsKey(rest) && !rest.equals("m") && !rest.equals("G")) {
            return PREFIXES.get(rest);
        }
        throw new QuantityException(
                QuantityException.Reason.WRONG_UNIT, restStart, TEXTS.text("refused.unit", rest, example(expected)));
    }

    private static List<String> symbols(Unit unit) {
        return switch (unit) {
            case OHM -> List.of("\u03a9", "\u2126", "ohm", "Ohm", "ohms", "R");
            case CELSIUS -> List.of("\u00b0C", "C", "degC");
            case SECOND -> List.of("s", "sec");
            case NONE -> List.of();
            default -> List.of(unit.symbol());
        };
    }

    private static Quantity finite(double value, String text, int start, Unit expected) throws QuantityException {
        if (!Double.isFinite(value)) {
            throw new QuantityException(
                    QuantityException.Reason.TOO_LARGE,
                    start,
                    TEXTS.text("refused.large", text, TEXTS.text("unit." + expected.name())));
        }
        return new Quantity(value, expected);
    }

    private static String example(Unit unit) {
        return switch (unit) {
            case OHM -> TEXTS.text("example.OHM");
            case VOLT -> TEXTS.text("example.VOLT");
            case WATT -> "90 W";
            case HERTZ -> "1 kHz";
            case SECOND -> "20 ms";
            case CELSIUS -> "25 \u00b0C";
            case DECIBEL -> TEXTS.text("example.DECIBEL");
            case PERCENT -> "1 %";
            case NONE -> TEXTS.text("example.NONE");
            default -> "1 " + unit.symbol();
        };
    }
}
