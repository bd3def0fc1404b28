// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.OptionalDouble;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityParser;
import org.ohmstead.units.Unit;

/** Reads the quantities that options take. */
final class Quantities {
    private Quantities() {}

    /** Returns a quantity above 0 in its unit; {@code option} names it in messages. */
    static double positive(String text, Unit unit, String option) throws InputException {
        double value = any(text, unit, option);
        if (value <= 0) {
            throw new InputException(option + " is " + text + "; it must be above 0.");
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
            throw new InputException(option + " is " + text + "; it must be between 0 and 100 %.");
        }
        return percent / 100;
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
