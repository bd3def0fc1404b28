// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.math.BigDecimal;
import java.math.MathContext;
import java.text.DecimalFormatSymbols;
import org.ohmstead.units.text.Language;

/** Writes numbers, for messages and for commands. */
final class Show {
    private static final MathContext DIGITS = new MathContext(7);

    private Show() {}

    /** Returns a number with at most seven digits that count, as NR1 or NR2 of IEEE 488.2, such as 14.4 or 1000. */
    static String number(double value) {
        if (value == 0 || !Double.isFinite(value)) {
            return value == 0 ? "0" : Double.toString(value);
        }
        return new BigDecimal(value).round(DIGITS).stripTrailingZeros().toPlainString();
    }

    /** Returns a number for a message, with the decimal mark of the language spoken now. */
    static String said(double value) {
        char mark = DecimalFormatSymbols.getInstance(Language.current()).getDecimalSeparator();
        return number(value).replace('.', mark);
    }
}
