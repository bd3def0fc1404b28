// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;
import org.ohmstead.units.text.Messages;

/** Numbers as they stand in a sentence: point as decimal mark, four significant digits. */
public final class Sentences {
    private static final Messages TEXTS = Messages.of(Sentences.class);

    private static final MathContext FOUR_DIGITS = new MathContext(4, RoundingMode.HALF_UP);
    private static final double SMALLEST_PLAIN = 1e-6;
    private static final double LARGEST_PLAIN = 1e7;
    private static final double SMALLEST_PERCENT = 0.01;

    private Sentences() {}

    /** Returns a finite number to four significant digits, whole digits always kept. */
    public static String number(double value) {
        double size = Math.abs(value);
        if (size == 0) {
            return "0";
        }
        if (size < SMALLEST_PLAIN || size >= LARGEST_PLAIN) {
            return String.format(Locale.ROOT, "%.3e", value);
        }
        BigDecimal rounded = new BigDecimal(value).round(FOUR_DIGITS);
        if (size >= 1000) {
            rounded = new BigDecimal(value).setScale(0, RoundingMode.HALF_UP);
        }
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** Returns the number with its unit; an empty unit leaves the number alone. */
    public static String quantity(double value, String unit) {
        return unit.isEmpty() ? number(value) : number(value) + " " + unit;
    }

    /** Returns a text of this package in the language spoken. */
    public static String text(String key, Object... arguments) {
        return TEXTS.text(key, arguments);
    }

    /** Returns the key of the text about groups of one kind: the prefix with the kind's name, or with "other" for a kind without one. */
    public static String keyOf(Messages texts, String prefix, String what) {
        String key = prefix + "." + what;
        return texts.has(key) ? key : prefix + ".other";
    }

    /** Returns the plural of an English noun of the regular kind, e.g. "benches". */
    public static String plural(String noun) {
        if (noun.matches(".*(s|x|z|ch|sh)")) {
            return noun + "es";
        }
        return noun.matches(".*[^aeiou]y") ? noun.substring(0, noun.length() - 1) + "ies" : noun + "s";
    }

    /** Returns a ratio as a percentage to three significant digits, e.g. 0.951 as "95.1 %". */
    public static String percent(double ratio) {
        double percent = 100 * ratio;
        if (percent > 0 && percent < SMALLEST_PERCENT) {
            return TEXTS.text("percent.least");
        }
        if (percent < 100 && percent > 100 - SMALLEST_PERCENT) {
            return TEXTS.text("percent.most");
        }
        int digits = percent > 99 && percent < 100 ? 4 : 3;
        BigDecimal rounded = new BigDecimal(percent).round(new MathContext(digits, RoundingMode.HALF_UP));
        return (rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString()) + " %";
    }
}
