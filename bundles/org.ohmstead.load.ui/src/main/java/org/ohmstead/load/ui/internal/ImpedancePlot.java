// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.ohmstead.load.Impedance;
import org.ohmstead.load.NetworkImpedance;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;

/** A network's impedance over the audio band: its magnitude, its phase, and what they mean for the power. */
final class ImpedancePlot {
    private static final Messages TEXTS = Messages.of(ImpedancePlot.class);

    static final double LOWEST_HZ = 20;
    static final double HIGHEST_HZ = 20_000;
    private static final int POINTS = 121;
    private static final double WITHIN_RATIO = 0.01;
    private static final double LEAST_SPAN_RATIO = 0.02;
    private static final double LEAST_SPAN_DEGREES = 1;

    private ImpedancePlot() {}

    /** Returns the magnitude. */
    static Plot magnitude(NetworkImpedance impedance) {
        return Numbers.withPoint(() -> makeMagnitude(impedance));
    }

    /** Returns by how many degrees the voltage leads the current. */
    static Plot phase(NetworkImpedance impedance) {
        return Numbers.withPoint(() -> makePhase(impedance));
    }

    private static Plot makeMagnitude(NetworkImpedance impedance) {
        List<PlotPoint> points = points(impedance, Impedance::magnitudeOhms);
        double top = Math.max(impedance.ohms(), highest(points));
        double span = Math.max(top - impedance.ohms(), LEAST_SPAN_RATIO * impedance.ohms());
        Plot plot = Plot.of(
                        "",
                        frequency(),
                        Axis.linear("|Z|", "\u03a9")
                                .withRange(impedance.ohms() - span / 4, impedance.ohms() + 5 * span / 4))
                .withSeries(new Series("", points, Style.LINE, 0));
        OptionalDouble limit = impedance.powerLimitHz(WITHIN_RATIO);
        boolean inSight = limit.isPresent() && limit.getAsDouble() > LOWEST_HZ && limit.getAsDouble() < HIGHEST_HZ;
        return inSight ? plot.withMark(Mark.vertical(limit.getAsDouble(), TEXTS.text("plot.onePercent"))) : plot;
    }

    private static Plot makePhase(NetworkImpedance impedance) {
        List<PlotPoint> points = points(impedance, Impedance::phaseDegrees);
        double span = Math.max(highest(points), LEAST_SPAN_DEGREES);
        return Plot.of(
                        "",
                        frequency(),
                        Axis.linear(TEXTS.text("plot.phase"), "\u00b0").withRange(-span / 4, 5 * span / 4))
                .withSeries(new Series("", points, Style.LINE, 1));
    }

    private static Axis frequency() {
        return Axis.log(TEXTS.text("plot.frequency"), "Hz").withRange(LOWEST_HZ, HIGHEST_HZ);
    }

    private static List<PlotPoint> points(NetworkImpedance impedance, ToDoubleFunction<Impedance> figure) {
        List<PlotPoint> points = new ArrayList<>();
        for (int i = 0; i < POINTS; i++) {
            double frequencyHz = LOWEST_HZ * Math.pow(HIGHEST_HZ / LOWEST_HZ, i / (POINTS - 1.0));
            points.add(new PlotPoint(frequencyHz, figure.applyAsDouble(impedance.at(frequencyHz))));
        }
        return points;
    }

    private static double highest(List<PlotPoint> points) {
        return points.stream().mapToDouble(PlotPoint::y).max().orElseThrow();
    }

    /** Says up to where the power is V^2/R, and what that rests on. */
    static String note(NetworkImpedance impedance, boolean behindLeads) {
        OptionalDouble limit = impedance.powerLimitHz(WITHIN_RATIO);
        if (limit.isEmpty()) {
            return TEXTS.text("impedance.resistive");
        }
        Impedance top = impedance.at(HIGHEST_HZ);
        String within =
                TEXTS.text(behindLeads ? "impedance.withLeads" : "impedance.withoutLeads", hertz(limit.getAsDouble()));
        String atTop = TEXTS.text(
                "impedance.atTop",
                Numbers.digits(top.magnitudeOhms(), Unit.OHM, 4),
                Numbers.digits(top.phaseDegrees(), 3));
        String known = within + " " + atTop;
        return impedance.isComplete() ? known : known + " " + TEXTS.text("impedance.incomplete");
    }

    private static String hertz(double frequencyHz) {
        return Numbers.digits(frequencyHz, Unit.HERTZ, 3);
    }
}
