// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import org.ohmstead.model.OutputClass;
import org.ohmstead.model.Range;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;

/** Numbers and phrases as these views show them. */
final class HeatWords {
    private static final Messages TEXTS = Messages.of(HeatWords.class);
    private static final int DIGITS = 3;
    private static final double WHOLE = 1000;
    private static final double MINUTE = 60;
    private static final double HOUR = 3600;

    private HeatWords() {}

    static String of(OutputClass outputClass) {
        return TEXTS.text("class." + outputClass.name());
    }

    /** Returns a number with three significant digits, whole from 1000 on. */
    static String number(double value) {
        BigDecimal rounded = Math.abs(value) >= WHOLE
                ? BigDecimal.valueOf(Math.rint(value))
                : new BigDecimal(value, new MathContext(DIGITS));
        return Numbers.localised(Numbers.plain(rounded));
    }

    /** Returns a figure with exactly three significant digits, whole from 1000 on. */
    static String figure(double value) {
        return value == 0 || Math.abs(value) >= WHOLE ? number(value) : Numbers.digits(value, DIGITS);
    }

    /** Returns "0.4 – 0.5", or one number when both ends are shown alike. */
    static String range(Range range) {
        String low = figure(range.low());
        String high = figure(range.high());
        return low.equals(high) ? low : low + " \u2013 " + high;
    }

    /** Returns a time in the unit that fits: "12.5 s", "8.3 min", "2.1 h". */
    static String time(double seconds) {
        if (seconds < 2 * MINUTE) {
            return number(seconds) + " s";
        }
        return seconds < 2 * HOUR ? number(seconds / MINUTE) + " min" : number(seconds / HOUR) + " h";
    }

    /** Returns the text of a key for one or for many, with their number: "1 rest", "3 rests". */
    static String count(int number, String key) {
        return TEXTS.text(key + (number == 1 ? ".one" : ".many"), Integer.toString(number));
    }

    /** Returns a line for a quantity that lies in a range, its middle as the value. */
    static FigureRow row(String name, Range range, String unit, String remark) {
        String between = range(range);
        String middle = figure(range.middle());
        return FigureRow.of(name, middle, unit, between.equals(middle) ? "" : between, remark);
    }

    /** Returns a time as {@link #time}, with exactly three significant digits. */
    static String timeFigure(double seconds) {
        return timeNumber(seconds) + " " + timeUnit(seconds);
    }

    /** Returns the number of a time with three significant digits, in the unit that {@link #time} takes. */
    static String timeNumber(double seconds) {
        return switch (timeUnit(seconds)) {
            case "min" -> figure(seconds / MINUTE);
            case "h" -> figure(seconds / HOUR);
            default -> figure(seconds);
        };
    }

    /** Returns the unit that {@link #time} takes. */
    static String timeUnit(double seconds) {
        return time(seconds).substring(time(seconds).indexOf(' ') + 1);
    }

    /** Returns a temperature without its unit, to a tenth of a degree. */
    static String celsius(double celsius) {
        return Numbers.format("%.1f", celsius);
    }
}
