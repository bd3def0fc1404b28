// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.ohmstead.model.Range;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.BandPoint;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.thermal.HeatBand;
import org.ohmstead.thermal.HeatBandPoint;
import org.ohmstead.thermal.HeatCase;
import org.ohmstead.thermal.PowerProfile;
import org.ohmstead.thermal.PowerStep;
import org.ohmstead.units.text.Messages;

/** How case and junctions warm up during a step and cool down afterwards. */
final class StepCourse {
    private static final Messages TEXTS = Messages.of(StepCourse.class);
    private static final int POINTS = 121;
    private static final double IN_THE_END_SECONDS = 1e12;
    private static final double LONG_SECONDS = 600;
    private static final double MINUTE = 60;
    private static final double REST_RATIO = 2;

    private final StepQuestion question;
    private final StepPower power;
    private final WarmBody body;

    StepCourse(StepQuestion question, StepPower power, WarmBody body) {
        this.question = question;
        this.power = power;
        this.body = body;
    }

    private HeatBand band(PowerProfile profile) {
        List<Range> unknowns = new ArrayList<>(body.unknowns());
        unknowns.add(power.heatWatts());
        unknowns.add(power.loudStageWatts().orElse(power.loudHeatWatts()));
        return HeatBand.of(
                unknowns,
                choice -> new HeatCase(
                        body.model(choice[0], choice[1], choice[2]),
                        scaled(profile, choice[3], choice[4]),
                        question.airCelsius()));
    }

    /** A profile of ones and zeros times the powers of a choice. */
    private static PowerProfile scaled(PowerProfile shape, double heatWatts, double stageWatts) {
        return new PowerProfile(shape.steps().stream()
                .map(step -> new PowerStep(step.seconds(), step.watts()[0] * heatWatts, step.watts()[1] * stageWatts))
                .toList());
    }

    /** Returns the lines of the temperatures. */
    List<FigureRow> rows() {
        HeatBand on = band(PowerProfile.constant(1, 1));
        List<FigureRow> rows = new ArrayList<>();
        boolean timed = body.caseJoulesPerKelvin().isPresent();
        rows.addAll(rows(on, WarmBody.CASE, "course.case", body.caseLimitCelsius(), timed));
        if (body.deviceKelvinPerWatt().isPresent()) {
            rows.addAll(rows(on, WarmBody.DEVICE, "course.junction", body.deviceLimitCelsius(), timed));
        } else {
            rows.add(FigureRow.unknown(TEXTS.text("course.junction"), TEXTS.text("course.noDevice")));
        }
        return rows;
    }

    private List<FigureRow> rows(HeatBand on, int point, String key, OptionalDouble limit, boolean timed) {
        List<HeatBandPoint> points = on.celsius(point, new double[] {question.seconds(), IN_THE_END_SECONDS});
        String after = TEXTS.text(key + ".after", HeatWords.time(question.seconds()));
        FigureRow end = row(TEXTS.text(key + ".end"), points.get(1), limit);
        FigureRow.Topic topic = point == WarmBody.CASE ? FigureRow.Topic.CASE_AFTER : FigureRow.Topic.OTHER;
        return timed
                ? List.of(row(after, points.get(0), limit).about(topic), end)
                : List.of(FigureRow.unknown(after, TEXTS.text("course.noCapacity")), end);
    }

    private static FigureRow row(String name, HeatBandPoint point, OptionalDouble limit) {
        String low = HeatWords.celsius(point.lowCelsius());
        String high = HeatWords.celsius(point.highCelsius());
        FigureRow row = FigureRow.of(
                name,
                HeatWords.celsius(point.middleCelsius()),
                "\u00b0C",
                low.equals(high) ? "" : low + " \u2013 " + high,
                limit.isPresent()
                        ? TEXTS.text("course.mayReach", HeatWords.number(limit.getAsDouble()))
                        : TEXTS.text("course.noLimit"));
        return limit.isPresent() && point.highCelsius() > limit.getAsDouble()
                ? row.caution(TEXTS.text("course.above", HeatWords.number(limit.getAsDouble())))
                : row;
    }

    /** Returns the course over the step and as long again twice without power; empty when no time is known. */
    Optional<Plot> plot() {
        if (body.caseJoulesPerKelvin().isEmpty()) {
            return Optional.empty();
        }
        double on = question.seconds();
        double total = (1 + REST_RATIO) * on;
        HeatBand course =
                band(new PowerProfile(List.of(new PowerStep(on, 1, 1), new PowerStep(REST_RATIO * on, 0, 0))));
        boolean minutes = total > LONG_SECONDS;
        double unit = minutes ? MINUTE : 1;
        Plot plot = Plot.of(
                        "",
                        Axis.linear(TEXTS.text("plot.time"), minutes ? "min" : "s")
                                .withRange(0, total / unit),
                        Axis.linear(TEXTS.text("plot.temperature"), "\u00b0C"))
                .withMark(Mark.vertical(on / unit, TEXTS.text("course.ends")));
        plot = with(plot, course, WarmBody.CASE, "course.case", total, unit);
        if (body.deviceKelvinPerWatt().isPresent()) {
            plot = with(plot, course, WarmBody.DEVICE, "course.junction", total, unit);
        }
        return Optional.of(plot);
    }

    private Plot with(Plot plot, HeatBand course, int point, String key, double totalSeconds, double unit) {
        double[] times = new double[POINTS + 2];
        int at = 0;
        for (int i = 0; i < POINTS; i++) {
            double seconds = totalSeconds * i / (POINTS - 1.0);
            double before = at == 0 ? -1 : times[at - 1];
            if (before < question.seconds() && seconds >= question.seconds()) {
                times[at++] = question.seconds();
                // The junctions fall at once when the signal ends.
                times[at++] = Math.nextUp(question.seconds());
            }
            if (at == 0 || seconds > times[at - 1]) {
                times[at++] = seconds;
            }
        }
        List<HeatBandPoint> points = course.celsius(point, Arrays.copyOf(times, at));
        List<BandPoint> edges = points.stream()
                .map(each -> new BandPoint(each.seconds() / unit, each.lowCelsius(), each.highCelsius()))
                .toList();
        boolean wide = points.stream().anyMatch(each -> each.highCelsius() > each.lowCelsius());
        Plot banded = wide ? plot.withBand(new Band("", edges, point)) : plot;
        Plot drawn = banded.withSeries(new Series(
                TEXTS.text(key + ".series"),
                line(points, HeatBandPoint::middleCelsius, unit),
                point == WarmBody.CASE ? Style.LINE : Style.DASHED_LINE,
                point));
        OptionalDouble limit = point == WarmBody.CASE ? body.caseLimitCelsius() : body.deviceLimitCelsius();
        boolean reached =
                limit.isPresent() && points.stream().anyMatch(each -> each.highCelsius() >= limit.getAsDouble());
        return reached ? drawn.withMark(Mark.horizontal(limit.getAsDouble(), TEXTS.text(key + ".limit"))) : drawn;
    }

    private static List<PlotPoint> line(
            List<HeatBandPoint> points, ToDoubleFunction<HeatBandPoint> figure, double unit) {
        return points.stream()
                .map(each -> new PlotPoint(each.seconds() / unit, figure.applyAsDouble(each)))
                .toList();
    }
}
