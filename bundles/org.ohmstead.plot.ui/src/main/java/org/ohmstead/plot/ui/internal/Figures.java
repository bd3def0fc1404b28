// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.ohmstead.plot.ui.ReadOutStyle;

/** Writes values with as many digits as mean something. */
public final class Figures {
    private static final int MOST_DECIMALS = 9;
    private static final int MOST_DIGITS = 7;
    private static final double LARGEST_PLAIN = 1e7;

    private Figures() {}

    /**
     * Returns the value with its unit, its last digit no finer than the resolution.
     *
     * @param resolution what can be told apart, above 0
     */
    public static String value(double value, double resolution, String unit, ReadOutStyle style) {
        return style.number(number(value, resolution)) + suffix(unit);
    }

    /** Returns the value without its unit, its last digit no finer than the resolution. */
    public static String number(double value, double resolution) {
        int decimals = (int) Math.ceil(-Math.log10(resolution) - 1e-9);
        int magnitude = value == 0 ? 0 : (int) Math.floor(Math.log10(Math.abs(value)));
        int kept = Math.min(decimals, MOST_DIGITS - 1 - magnitude);
        if (Math.abs(value) >= LARGEST_PLAIN || kept > MOST_DECIMALS) {
            return exponential(value, Math.max(1, Math.min(MOST_DIGITS, kept + magnitude + 1)));
        }
        return plain(value, Math.max(0, kept));
    }

    /**
     * Returns the value with its uncertainty, which keeps two digits, and the value as many places as those (GUM, JCGM
     * 100:2008, 7.2.6): "79.0 W ± 1.2 W (95 %)".
     */
    public static String uncertain(double value, double halfLength, String unit, ReadOutStyle style) {
        if (halfLength == 0) {
            double sixDigits = Math.max(Double.MIN_NORMAL, Math.abs(value) * 1e-5);
            return style.number(number(value, sixDigits)) + suffix(unit) + " ± 0" + suffix(unit);
        }
        BigDecimal half = new BigDecimal(halfLength);
        int places = 1 - (half.precision() - half.scale() - 1);
        BigDecimal rounded = half.setScale(places, RoundingMode.HALF_UP);
        if (rounded.precision() > 2) {
            places--;
            rounded = half.setScale(places, RoundingMode.HALF_UP);
        }
        String shownHalf = rounded.toPlainString();
        String shown = places > MOST_DECIMALS + 3
                ? exponential(value, MOST_DIGITS)
                : minus(new BigDecimal(value)
                        .setScale(places, RoundingMode.HALF_UP)
                        .toPlainString());
        return style.number(shown) + suffix(unit) + " ± " + style.number(shownHalf) + suffix(unit) + " ("
                + style.coverage() + ")";
    }

    private static String suffix(String unit) {
        return unit.isEmpty() ? "" : " " + unit;
    }

    private static String plain(double value, int decimals) {
        BigDecimal rounded = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP);
        return minus(rounded.signum() == 0 ? rounded.abs().toPlainString() : rounded.toPlainString());
    }

    private static String exponential(double value, int digits) {
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_UP));
        int exponent = rounded.signum() == 0 ? 0 : rounded.precision() - rounded.scale() - 1;
        return minus(rounded.movePointLeft(exponent).toPlainString()) + "e" + exponent;
    }

    private static String minus(String number) {
        return number.replace('-', '\u2212');
    }
}
