// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.drawing;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers in drawings and lists, with a decimal point. */
final class Figures {
    private static final double PERCENT = 100;
    private static final double LEAST_WITHOUT_PREFIX = 0.1;
    private static final double MILLI = 1000;

    private Figures() {}

    /** Returns a number with so many significant digits, zeros at the end dropped, never in exponent form. */
    static String digits(double value, int significantDigits) {
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(significantDigits, RoundingMode.HALF_EVEN));
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    static String ohms(double ohms) {
        return ohms < LEAST_WITHOUT_PREFIX ? digits(ohms * MILLI, 4) + " m\u03a9" : digits(ohms, 4) + " \u03a9";
    }

    static String watts(double watts) {
        return digits(watts, 3) + " W";
    }

    static String amps(double amps) {
        return digits(amps, 3) + " A";
    }

    static String percent(double ratio) {
        return digits(ratio * PERCENT, 3) + " %";
    }

    static String celsius(double celsius) {
        return digits(Math.rint(celsius), 4) + " \u00b0C";
    }
}
