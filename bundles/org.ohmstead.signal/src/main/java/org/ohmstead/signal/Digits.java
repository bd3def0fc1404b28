// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers in sentences: as many digits as say something, no exponent, no idle zeros, always a point. */
final class Digits {
    private Digits() {}

    static String of(double value, int digits) {
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(digits));
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
