// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import java.util.Objects;

/**
 * How the read-out at the crosshair writes numbers; the picture itself and what is saved of it do not follow.
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

    /** Returns a number that is written with a decimal point as this style has it. */
    public String number(String pointed) {
        return decimalComma ? pointed.replace('.', ',') : pointed;
    }
}
