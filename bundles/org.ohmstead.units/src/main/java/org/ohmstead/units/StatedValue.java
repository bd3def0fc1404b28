// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * A value and its uncertainty as they are stated together: the uncertainty with two significant digits, the value to the same decimal
 * place (JCGM 100:2008, 7.2.6). Both are plain decimal numbers with a point and, below 0, a hyphen-minus.
 *
 * @param value the rounded value
 * @param uncertainty the rounded uncertainty
 */
public record StatedValue(String value, String uncertainty) {
    private static final int UNCERTAINTY_DIGITS = 2;

    /**
     * Rounds a value to its uncertainty, halves away from 0.
     *
     * @param value finite
     * @param uncertainty finite, above 0, in the unit of the value
     */
    public static StatedValue of(double value, double uncertainty) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("value is " + value + "; it must be a finite number");
        }
        if (!(uncertainty > 0) || Double.isInfinite(uncertainty)) {
            throw new IllegalArgumentException(
                    "uncertainty is " + uncertainty + "; it must be a finite number above 0");
        }
        BigDecimal rounded =
                BigDecimal.valueOf(uncertainty).round(new MathContext(UNCERTAINTY_DIGITS, RoundingMode.HALF_UP));
        int exponent = rounded.precision() - rounded.scale() - 1;
        int places = UNCERTAINTY_DIGITS - 1 - exponent;
        return new StatedValue(
                BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP).toPlainString(),
                rounded.setScale(places, RoundingMode.UNNECESSARY).toPlainString());
    }
}
