// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.units.text.Messages;

/** The markings on resistors (IEC 60062): letters and digits such as 4K7J, and rings of colour. */
public final class ResistorCode {
    private static final Messages TEXTS = Messages.of(ResistorCode.class);
    private static final Pattern WORD = Pattern.compile("[^\\s,;/-]+");
    private static final double NO_BAND_RATIO = 0.2;
    private static final double FINE_RATIO = 0.02;
    private static final double SAME = 1e-9;
    private static final int LOWEST_EXPONENT = -3;
    private static final int HIGHEST_EXPONENT = 9;

    /**
     * What a marking says.
     *
     * @param ohms resistance in ohms, above 0
     * @param toleranceRatio 0 to 1, when stated
     * @param temperatureCoefficientPerKelvin relative change of the resistance per kelvin, as a magnitude, when stated
     */
    public record Marking(double ohms, OptionalDouble toleranceRatio, OptionalDouble temperatureCoefficientPerKelvin) {
        public Marking {
            Checks.positive(ohms, "ohms");
            toleranceRatio.ifPresent(value -> Checks.within(value, 0, 1, "toleranceRatio"));
            temperatureCoefficientPerKelvin.ifPresent(
                    value -> Checks.within(value, 0, 0.1, "temperatureCoefficientPerKelvin"));
        }
    }

    private ResistorCode() {}

    /**
     * Reads letters and digits such as 4R7, R47, 47K, 4K7, 1M and, with a tolerance letter, 4K7J.
     *
     * @throws NotationException when they cannot be read
     */
    public static Marking ofLetters(String text) throws NotationException {
        Checks.present(text, "text");
        ResistanceText.Value value;
        try {
            value = ResistanceText.read(text, 0, text.length());
        } catch (ResistanceText.Fault fault) {
            throw fault.said();
        }
        if (value.ratedWatts().isPresent()) {
            throw new NotationException(
                    text, text.indexOf('@'), TEXTS.text("marking.rating"), TEXTS.text("marking.ratingRemedy"));
        }
        return new Marking(value.ohms(), value.toleranceRatio(), OptionalDouble.empty());
    }

    /**
     * Writes a value by letters and digits, with as many digits as it has.
     *
     * @param ohms resistance in ohms, 1e-6 to 1e14
     */
    public static String letters(double ohms) {
        Checks.within(ohms, 1e-6, 1e14, "ohms");
        BigDecimal value = BigDecimal.valueOf(ohms);
        char multiplier = 'R';
        for (char next : "KMGT".toCharArray()) {
            if (value.compareTo(BigDecimal.valueOf(1000)) >= 0) {
                value = value.movePointLeft(3);
                multiplier = next;
            }
        }
        String plain = value.stripTrailingZeros().toPlainString();
        int point = plain.indexOf('.');
        String whole = point < 0 ? plain : plain.substring(0, point);
        return (whole.equals("0") ? "" : whole) + multiplier + (point < 0 ? "" : plain.substring(point + 1));
    }

    /**
     * Writes a value and its tolerance by letters and digits.
     *
     * @param ohms resistance in ohms, 1e-6 to 1e14
     * @param toleranceRatio one that has a letter: 0.001, 0.0025, 0.005, 0.01, 0.02, 0.05, 0.1 or 0.2
     */
    public static String letters(double ohms, double toleranceRatio) {
        return letters(ohms)
                + ToleranceLetter.letter(toleranceRatio)
                        .orElseThrow(() -> new IllegalArgumentException("toleranceRatio is " + toleranceRatio
                                + "; it must be 0.001, 0.0025, 0.005, 0.01, 0.02, 0.05, 0.1 or 0.2,"
                                + " which have a letter"));
    }

    /**
     * Reads rings of colour: 3 (two digits, multiplier; 20 %), 4 (and tolerance), 5 (three digits, multiplier, tolerance) or 6 (and
     * temperature coefficient).
     *
     * @param text the colours in reading order by their English names or the letters of IEC 60757, such as "yellow violet gold gold" or
     *     "YE VT GD GD"
     * @throws NotationException when they cannot be read
     */
    public static Marking ofColours(String text) throws NotationException {
        Checks.present(text, "text");
        List<ResistorColour> colours = new ArrayList<>();
        List<Integer> positions = new ArrayList<>();
        Matcher words = WORD.matcher(text);
        while (words.find()) {
            Optional<ResistorColour> colour = ResistorColour.named(words.group());
            if (colour.isEmpty()) {
                throw new NotationException(
                        text,
                        words.start(),
                        TEXTS.text("marking.noColour"),
                        TEXTS.text("marking.noColourRemedy", ResistorColour.names()));
            }
            colours.add(colour.get());
            positions.add(words.start());
        }
        int count = colours.size();
        if (count < 3 || count > 6) {
            throw new NotationException(
                    text,
                    count > 6 ? positions.get(6) : text.length(),
                    TEXTS.text("marking.count", Integer.toString(count)),
                    TEXTS.text("marking.countRemedy"));
        }
        return new Rings(text, colours, positions).read();
    }

    /**
     * Returns the rings of colour of a marking in reading order: three digits when it has a temperature coefficient, a tolerance of 2 % or
     * less, or a value that needs them; otherwise two.
     *
     * @throws IllegalArgumentException when the code has no colours for it
     */
    public static List<ResistorColour> colours(Marking marking) {
        Checks.present(marking, "marking");
        double tolerance = marking.toleranceRatio().orElse(NO_BAND_RATIO);
        OptionalDouble coefficient = marking.temperatureCoefficientPerKelvin();
        List<ResistorColour> rings =
                coefficient.isPresent() || tolerance <= FINE_RATIO + SAME ? List.of() : digits(marking.ohms(), 2);
        boolean three = rings.isEmpty();
        if (three) {
            rings = digits(marking.ohms(), 3);
        }
        if (rings.isEmpty()) {
            throw new IllegalArgumentException("ohms is " + marking.ohms()
                    + "; rings of colour show up to three digits, from 0.1 ohm to 999 gigaohm");
        }
        List<ResistorColour> all = new ArrayList<>(rings);
        if (three || Math.abs(tolerance - NO_BAND_RATIO) > SAME) {
            all.add(ResistorColour.ofTolerance(tolerance)
                    .orElseThrow(() -> new IllegalArgumentException(
                            "toleranceRatio is " + tolerance + "; no ring of the colour code stands for it here")));
        }
        if (coefficient.isPresent()) {
            double value = coefficient.getAsDouble();
            all.add(ResistorColour.ofCoefficient(value)
                    .orElseThrow(() -> new IllegalArgumentException("temperatureCoefficientPerKelvin is " + value
                            + "; no ring of the colour code stands for it")));
        }
        return List.copyOf(all);
    }

    private static List<ResistorColour> digits(double ohms, int count) {
        int first = count == 3 ? 100 : 10;
        for (int exponent = LOWEST_EXPONENT; exponent <= HIGHEST_EXPONENT; exponent++) {
            double scaled = ohms / Math.pow(10, exponent);
            long whole = Math.round(scaled);
            if (whole >= first && whole < 10L * first && Math.abs(scaled - whole) < SAME * whole) {
                List<ResistorColour> rings = new ArrayList<>();
                for (char digit : Long.toString(whole).toCharArray()) {
                    rings.add(ResistorColour.values()[digit - '0']);
                }
                rings.add(ResistorColour.ofExponent(exponent));
                return rings;
            }
        }
        return List.of();
    }

    /** Rings on their way to a marking. */
    private record Rings(String text, List<ResistorColour> colours, List<Integer> positions) {
        Marking read() throws NotationException {
            int count = colours.size();
            int digits = count <= 4 ? 2 : 3;
            int whole = 0;
            for (int i = 0; i < digits; i++) {
                whole = whole * 10 + colour(i, ResistorColour::digit, "marking.noDigit");
            }
            if (whole == 0) {
                throw new NotationException(
                        text, positions.get(0), TEXTS.text("marking.zero"), TEXTS.text("marking.zeroRemedy"));
            }
            int exponent = colour(digits, ResistorColour::exponent, "marking.noMultiplier");
            double ohms = BigDecimal.valueOf(whole, -exponent).doubleValue();
            double tolerance = count == 3
                    ? NO_BAND_RATIO
                    : colour(digits + 1, ResistorColour::toleranceRatio, "marking.noTolerance");
            OptionalDouble coefficient = count < 6
                    ? OptionalDouble.empty()
                    : OptionalDouble.of(
                            colour(5, ResistorColour::temperatureCoefficientPerKelvin, "marking.noCoefficient"));
            return new Marking(ohms, OptionalDouble.of(tolerance), coefficient);
        }

        private <N extends Number> N colour(int index, Function<ResistorColour, Optional<N>> meaning, String complaint)
                throws NotationException {
            Optional<N> value = meaning.apply(colours.get(index));
            if (value.isEmpty()) {
                throw new NotationException(
                        text,
                        positions.get(index),
                        TEXTS.text(complaint, colours.get(index).spoken()),
                        TEXTS.text("marking.ringRemedy"));
            }
            return value.get();
        }
    }
}
