// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import org.ohmstead.units.StatedValue;

/**
 * A value and its expanded uncertainty as they are printed: the uncertainty with two significant digits, the value to the same
 * decimal place (GUM 7.2.6).
 *
 * @param value the rounded value
 * @param uncertainty the rounded uncertainty; empty when there is none to state
 */
public record Rounding(String value, String uncertainty) {
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
        StatedValue stated = StatedValue.of(value, expandedUncertainty);
        return new Rounding(stated.value().replace('-', Figures.MINUS), stated.uncertainty());
    }

    /** Returns "97.3 ± 2.1", or the value alone when there is no uncertainty. */
    public String text() {
        return uncertainty.isEmpty() ? value : value + "\u00a0\u00b1\u00a0" + uncertainty;
    }
}
