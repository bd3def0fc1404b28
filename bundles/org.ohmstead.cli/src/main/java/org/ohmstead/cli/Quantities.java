// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Range;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityParser;
import org.ohmstead.units.Unit;

/** Reads the quantities that options take. */
final class Quantities {
    private static final double MILLIMETRES_PER_METRE = 1000;

    private Quantities() {}

    /** Returns a quantity above 0 in its unit; {@code option} names it in messages. */
    static double positive(String text, Unit unit, String option) throws InputException {
        double value = any(text, unit, option);
        if (value <= 0) {
            throw new InputException(Texts.of("quantity.positive", option, text));
        }
        return value;
    }

    /** Returns a quantity above 0, or empty when the option was not given. */
    static OptionalDouble optionalPositive(String text, Unit unit, String option) throws InputException {
        return text == null ? OptionalDouble.empty() : OptionalDouble.of(positive(text, unit, option));
    }

    /** Returns a percentage from 0 to 100 as a ratio. */
    static double ratio(String text, String option) throws InputException {
        double percent = any(text, Unit.PERCENT, option);
        if (percent < 0 || percent > 100) {
            throw new InputException(Texts.of("quantity.percent", option, text));
        }
        return percent / 100;
    }

    /** Returns a quantity in its unit that lies between two ends, both included. */
    static double within(String text, Unit unit, double lowest, double highest, String option) throws InputException {
        double value = any(text, unit, option);
        if (!(value >= lowest && value <= highest)) {
            throw new InputException(
                    Texts.of("quantity.within", option, text, Texts.number(lowest), Texts.number(highest)));
        }
        return value;
    }

    /** Returns a range that is written as one number or as two with ".." between, both within the ends; empty when it was not given. */
    static Optional<Range> optionalRange(String text, Unit unit, double lowest, double highest, String option)
            throws InputException {
        if (text == null) {
            return Optional.empty();
        }
        int dots = text.indexOf("..");
        if (dots < 0) {
            return Optional.of(Range.of(within(text, unit, lowest, highest, option)));
        }
        double low = within(text.substring(0, dots), unit, lowest, highest, option);
        double high = within(text.substring(dots + 2), unit, lowest, highest, option);
        if (high < low) {
            throw new InputException(Texts.of("quantity.order", option, text));
        }
        return Optional.of(new Range(low, high));
    }

    /** Returns a quantity between two ends, or empty when the option was not given. */
    static OptionalDouble optionalWithin(String text, Unit unit, double lowest, double highest, String option)
            throws InputException {
        return text == null ? OptionalDouble.empty() : OptionalDouble.of(within(text, unit, lowest, highest, option));
    }

    /** Returns a length in metres that is written in millimetres, with or without "mm", and lies between two ends in millimetres. */
    static double millimetres(String text, double lowest, double highest, String option) throws InputException {
        String number = text.strip().replaceAll("\\s*mm$", "");
        return within(number, Unit.NONE, lowest, highest, option) / MILLIMETRES_PER_METRE;
    }

    /** Returns a quantity in its unit. */
    static double any(String text, Unit unit, String option) throws InputException {
        try {
            return QuantityParser.parse(text, unit).value();
        } catch (QuantityException e) {
            throw new InputException(option + ": " + e.getMessage());
        }
    }
}
