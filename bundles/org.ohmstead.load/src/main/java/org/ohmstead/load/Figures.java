// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers in sentences. */
final class Figures {
    private static final MathContext THREE = new MathContext(3);
    private static final MathContext FOUR = new MathContext(4);

    private Figures() {}

    /** Returns a number with three significant digits, without an exponent. */
    static String three(double value) {
        return plain(value, THREE);
    }

    /** Returns a number with four significant digits, without an exponent. */
    static String four(double value) {
        return plain(value, FOUR);
    }

    private static String plain(double value, MathContext digits) {
        BigDecimal rounded = new BigDecimal(value).round(digits).stripTrailingZeros();
        return rounded.toPlainString();
    }
}
