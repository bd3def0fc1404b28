// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;

/**
 * One of the figures that are shown large while something is measured.
 *
 * @param kind which
 * @param course its values so far, in the order of time; of many only the last ones
 * @param detail what else is to be said of it, such as each channel's value; may be empty
 */
record LiveFigure(Kind kind, List<Trend.Sample> course, String detail) {
    private static final Messages TEXTS = Messages.of(LiveFigure.class);

    /** How many values are remembered. */
    static final int MOST = 240;

    private static final int FOR_TREND = 12;
    private static final double HUNDRED = 100;
    private static final double TEN = 10;

    /** What is shown. */
    enum Kind {
        /** Output power in watts, of the weakest channel. */
        POWER("W", "power"),
        /** Distortion in percent, of the worst channel. */
        THD("%", "thd"),
        /** Supply volts at the amplifier's terminals. */
        SUPPLY_VOLTS("V", "supply"),
        /** Supply current. */
        SUPPLY_AMPS("A", "current"),
        /** The temperature of the amplifier's case. */
        CASE_CELSIUS("\u00b0C", "case");

        private final String unit;
        private final String id;

        Kind(String unit, String id) {
            this.unit = unit;
            this.id = id;
        }

        String words() {
            return TEXTS.text("figure." + name());
        }

        String unit() {
            return unit;
        }

        String id() {
            return id;
        }
    }

    LiveFigure {
        course = List.copyOf(course);
    }

    static LiveFigure unknown(Kind kind) {
        return new LiveFigure(kind, List.of(), "");
    }

    /** Returns this with one more value. */
    LiveFigure with(double seconds, double value, String newDetail) {
        List<Trend.Sample> more = new ArrayList<>(course);
        more.add(new Trend.Sample(seconds, value));
        return new LiveFigure(kind, Trend.last(more, MOST), newDetail);
    }

    /** Returns this without its past, for the next item. */
    LiveFigure begun() {
        return unknown(kind);
    }

    OptionalDouble value() {
        return course.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(course.get(course.size() - 1).value());
    }

    Trend trend() {
        return Trend.of(Trend.last(course, FOR_TREND));
    }

    /** Returns the number alone, with as many digits as one can take in at a glance; a dash when nothing is known. */
    String number() {
        OptionalDouble value = value();
        if (value.isEmpty()) {
            return "\u2013";
        }
        double shown = value.getAsDouble();
        return switch (kind) {
            case THD -> thd(shown);
            case SUPPLY_VOLTS -> Numbers.format("%.2f", shown);
            case CASE_CELSIUS -> Numbers.format("%.1f", shown);
            case POWER, SUPPLY_AMPS -> Numbers.format(Math.abs(shown) < HUNDRED ? "%.1f" : "%.0f", shown);
        };
    }

    private static String thd(double percent) {
        if (percent < 1) {
            return Numbers.format("%.3f", percent);
        }
        return Numbers.format(percent < TEN ? "%.2f" : "%.1f", percent);
    }

    /** Returns what a screen reader and a hover say. */
    String sentence() {
        if (value().isEmpty()) {
            return TEXTS.text("figure.unknown", kind.words());
        }
        String going = trend().words();
        String key = going.isEmpty() ? "figure.steady" : "figure.going";
        return TEXTS.text(
                detail.isEmpty() ? key : key + "Detailed", kind.words(), number(), kind.unit(), going, detail);
    }
}
