// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.axis.TickType;
import org.jfree.chart.ui.TextAnchor;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Scale;
import org.ohmstead.plot.Tick;

/** Chooses the ticks of an axis so that their labels have room. */
final class TickPlan {
    private static final double MOST_PARTS = 10;
    private static final double LABEL_GAP = 9;
    private static final double MINUTE_SPACE = 7;

    private final Axis axis;
    private final boolean horizontal;
    private final boolean decimalComma;
    private final FontMetrics metrics;
    private final Font font;

    TickPlan(Axis axis, boolean horizontal, boolean decimalComma, Graphics2D graphics, Font font) {
        this.axis = axis;
        this.horizontal = horizontal;
        this.decimalComma = decimalComma;
        this.font = font;
        this.metrics = graphics.getFontMetrics(font);
    }

    List<NumberTick> ticks(double lower, double upper, double length) {
        if (!axis.ticks().isEmpty()) {
            List<NumberTick> named = new ArrayList<>();
            for (Tick tick : axis.ticks()) {
                if (tick.value() >= lower && tick.value() <= upper) {
                    named.add(tick(TickType.MAJOR, tick.value(), tick.label()));
                }
            }
            return named;
        }
        return axis.scale() == Scale.LOG ? logTicks(lower, upper, length) : linearTicks(lower, upper, length);
    }

    private List<NumberTick> linearTicks(double lower, double upper, double length) {
        RoundNumbers.Step step = linearStep(lower, upper, length);
        List<NumberTick> ticks = new ArrayList<>();
        for (BigDecimal value : RoundNumbers.multiples(step, lower, upper)) {
            ticks.add(tick(TickType.MAJOR, value.doubleValue(), text(value)));
        }
        return ticks;
    }

    private RoundNumbers.Step linearStep(double lower, double upper, double length) {
        RoundNumbers.Step step = RoundNumbers.step(upper - lower, MOST_PARTS);
        while (step.value() < upper - lower) {
            double need = 0;
            for (BigDecimal value : RoundNumbers.multiples(step, lower, upper)) {
                need = Math.max(need, space(text(value)));
            }
            if (step.value() / (upper - lower) * length >= need) {
                return step;
            }
            step = step.next();
        }
        return step;
    }

    private List<NumberTick> logTicks(double lower, double upper, double length) {
        List<RoundNumbers.Step> places = RoundNumbers.logPlaces(lower, upper);
        double decadeLength = length / (Math.log10(upper) - Math.log10(lower));
        double need = 0;
        for (RoundNumbers.Step place : places) {
            need = Math.max(need, space(text(place.times(1))));
        }
        Set<Integer> labelled = new HashSet<>(Set.of(1));
        if (decadeLength * Math.log10(2) >= need) {
            labelled.addAll(Set.of(2, 5));
        }
        int everyDecades = (int) Math.max(1, Math.ceil(need / decadeLength));
        List<NumberTick> ticks = new ArrayList<>();
        int labels = 0;
        for (RoundNumbers.Step place : places) {
            boolean label = labelled.contains(place.mantissa()) && Math.floorMod(place.exponent(), everyDecades) == 0;
            boolean room = decadeLength * Math.log10(10.0 / 9) * 4 >= MINUTE_SPACE || place.mantissa() == 1;
            labels += label ? 1 : 0;
            if (label || room) {
                ticks.add(tick(
                        label ? TickType.MAJOR : TickType.MINOR,
                        place.times(1).doubleValue(),
                        label ? text(place.times(1)) : ""));
            }
        }
        return labels >= 2 ? ticks : linearTicks(lower, upper, length);
    }

    private double space(String label) {
        return horizontal ? metrics.stringWidth(label) + LABEL_GAP : metrics.getHeight() * 1.25;
    }

    private String text(BigDecimal value) {
        String pointed = RoundNumbers.plain(value);
        String plain = decimalComma ? pointed.replace('.', ',') : pointed;
        return font.canDisplay('\u2212') ? plain.replace('-', '\u2212') : plain;
    }

    private NumberTick tick(TickType type, double value, String label) {
        TextAnchor anchor = horizontal ? TextAnchor.TOP_CENTER : TextAnchor.CENTER_RIGHT;
        return new NumberTick(type, value, label, anchor, anchor, 0);
    }
}
