// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.ohmstead.metrology.internal.Checks;

/**
 * The numerical tolerance of a standard uncertainty (JCGM 101:2008, 7.9.2): written with the wanted number of
 * significant digits as c times 10 to the power l, c a whole number, the uncertainty stands for everything within half
 * a unit of its last digit.
 *
 * @param value the tolerance delta = 10 to the power l, divided by 2, in the unit of the uncertainty, greater than 0
 * @param significantDigits the digits of the standard uncertainty that matter, 1 to 15; 1 or 2 are usual
 */
public record NumericalTolerance(double value, int significantDigits) {

    private static final int MOST_DIGITS = 15;

    /** Checks the ranges given above. */
    public NumericalTolerance {
        Checks.positive("value", value);
        checkDigits(significantDigits);
    }

    /**
     * Returns the tolerance of a standard uncertainty, e.g. 0.005 for 0.0754 with one digit (0.08) and 0.0005 with two
     * (0.075).
     *
     * @param standardUncertainty greater than 0
     * @param significantDigits 1 to 15
     */
    public static NumericalTolerance of(double standardUncertainty, int significantDigits) {
        Checks.positive("standardUncertainty", standardUncertainty);
        checkDigits(significantDigits);
        BigDecimal rounded =
                BigDecimal.valueOf(standardUncertainty).round(new MathContext(significantDigits, RoundingMode.HALF_UP));
        int leadingDigit = rounded.precision() - rounded.scale() - 1;
        BigDecimal unitOfLastDigit = BigDecimal.ONE.scaleByPowerOfTen(leadingDigit - significantDigits + 1);
        return new NumericalTolerance(unitOfLastDigit.doubleValue() / 2, significantDigits);
    }

    private static void checkDigits(int significantDigits) {
        if (significantDigits < 1 || significantDigits > MOST_DIGITS) {
            throw new IllegalArgumentException(
                    "significantDigits is " + significantDigits + " but must lie between 1 and " + MOST_DIGITS + ".");
        }
    }
}
