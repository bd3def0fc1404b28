// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import java.text.DecimalFormatSymbols;
import java.util.Objects;
import org.ohmstead.units.text.Language;

/**
 * How a chart writes numbers: the decimal sign along its axes and in the read-out at the crosshair, also in pictures that are copied or
 * saved. Tables of numbers always have a point.
 *
 * @param decimalComma whether with a decimal comma instead of a point
 * @param coverage what the uncertainty bars stand for, as it is written behind them in parentheses: "95 %", "k = 2"
 */
public record ReadOutStyle(boolean decimalComma, String coverage) {
    /** A decimal point, bars of 95 %. */
    public static final ReadOutStyle USUAL = new ReadOutStyle(false, "95 %");

    /** Checks the parameters. */
    public ReadOutStyle {
        Objects.requireNonNull(coverage, "coverage");
    }

    /** Returns the usual style with the decimal sign of the language spoken now. */
    public static ReadOutStyle spoken() {
        char mark = DecimalFormatSymbols.getInstance(Language.current()).getDecimalSeparator();
        return new ReadOutStyle(mark == ',', USUAL.coverage());
    }

    /** Returns a number that is written with a decimal point as this style has it. */
    public String number(String pointed) {
        return decimalComma ? pointed.replace('.', ',') : pointed;
    }
}
