// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * A value and its expanded uncertainty as they are printed: the uncertainty with two significant digits, the value to the same
 * decimal place (GUM 7.2.6).
 *
 * @param value the rounded value
 * @param uncertainty the rounded uncertainty; empty when there is none to state
 */
public record Rounding(String value, String uncertainty) {
    private static final int UNCERTAINTY_DIGITS = 2;
    private static final int DIGITS_WITHOUT_UNCERTAINTY = 4;

    /**
     * Returns the pair as printed; an uncertainty of 0 gives the value with four significant digits and no uncertainty.
     *
     * @param value finite
     * @param expandedUncertainty finite, at least 0, in the unit of the value
     */
    public static Rounding of(double value, double expandedUncertainty) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("value is " + value + "; it must be a finite number");
        }
        if (!(expandedUncertainty >= 0) || Double.isInfinite(expandedUncertainty)) {
            throw new IllegalArgumentException(
                    "expandedUncertainty is " + expandedUncertainty + "; it must be a finite number of at least 0");
        }
        if (expandedUncertainty <= 0) {
            return new Rounding(Figures.significant(value, DIGITS_WITHOUT_UNCERTAINTY), "");
        }
        BigDecimal uncertainty = BigDecimal.valueOf(expandedUncertainty)
                .round(new MathContext(UNCERTAINTY_DIGITS, RoundingMode.HALF_UP));
        int places = UNCERTAINTY_DIGITS - 1 - exponent(uncertainty);
        BigDecimal shown = uncertainty.setScale(places, RoundingMode.UNNECESSARY);
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP);
        return new Rounding(plain(rounded), plain(shown));
    }

    /** Returns "97.3 ± 2.1", or the value alone when there is no uncertainty. */
    public String text() {
        return uncertainty.isEmpty() ? value : value + "\u00a0\u00b1\u00a0" + uncertainty;
    }

    private static int exponent(BigDecimal number) {
        return number.precision() - number.scale() - 1;
    }

    private static String plain(BigDecimal number) {
        BigDecimal shown = number.scale() < 0 ? number.setScale(0) : number;
        return shown.toPlainString().replace('-', Figures.MINUS);
    }
}
