// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import org.ohmstead.history.Comparison;
import org.ohmstead.history.ComparisonRequest;
import org.ohmstead.history.Subject;
import org.ohmstead.history.SubjectDifference;
import org.ohmstead.history.SubjectPower;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Palette;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.report.internal.ComparisonBuilder.Setting;
import org.ohmstead.report.internal.ComparisonView.Group;

/** The tables and the chart of one mode and load of a comparison. */
final class ComparisonGroups {
    private static final double HEIGHT_RATIO = 0.3;
    private static final int LEGEND_CHARACTERS = 44;
    private static final int PAIR_CHARACTERS = 32;
    /** With more pairs, each is held against the first only. */
    private static final int MOST_PAIRS = 6;

    private final List<Subject> subjects;
    private final Speech speech;
    private final ChartBook book;

    ComparisonGroups(List<Subject> subjects, Speech speech, ChartBook book) {
        this.subjects = subjects;
        this.speech = speech;
        this.book = book;
    }

    /** Returns the comparison that has most powers; of several that at the highest voltage. */
    static Comparison main(SortedMap<Double, Comparison> byVolts) {
        Comparison main = byVolts.get(byVolts.firstKey());
        for (Comparison each : byVolts.values()) {
            main = each.powers().size() >= main.powers().size() ? each : main;
        }
        return main;
    }

    Group of(String id, Setting setting, SortedMap<Double, Comparison> byVolts) {
        Comparison main = main(byVolts);
        String ground = main.ground()
                .map(found -> speech.text(
                        "comparison.ground", speech.of(found.endPoint()), speech.hertz(found.frequencyHz())))
                .orElse("");
        String title = speech.text(
                "comparison.group",
                speech.of(setting.kind()),
                speech.within(setting.mode()),
                speech.ohms(setting.loadOhms()),
                ground);
        return new Group(
                id,
                title,
                charts(setting, byVolts),
                powers(byVolts),
                speech.text(
                        "comparison.differences", speech.volts(main.request().supplyVolts())),
                differences(main));
    }

    /** Returns under what is compared: "At 14.4 V, stereo into 4 Ω". */
    String where(ComparisonRequest request) {
        return speech.text(
                "comparison.where",
                speech.volts(request.supplyVolts()),
                speech.within(request.mode()),
                speech.ohms(request.loadOhms()));
    }

    /** Returns number and name. */
    String name(Subject subject) {
        return (subjects.indexOf(subject) + 1) + "\u2002" + subject.name();
    }

    String power(SubjectPower power, double confidence) {
        return speech.stated(power.watts().value(), power.watts().expandedUncertainty(confidence));
    }

    private Table powers(SortedMap<Double, Comparison> byVolts) {
        Table.Builder table = Table.titled("").text(speech.text("comparison.subject"));
        byVolts.keySet().forEach(volts -> table.number(speech.text("at", speech.fixed(volts, 1) + "\u00a0V"), "W"));
        for (Subject subject : subjects) {
            List<String> cells = new ArrayList<>();
            cells.add(name(subject));
            byVolts.values()
                    .forEach(comparison -> cells.add(powerOf(subject, comparison)
                            .map(power -> power(power, comparison.request().confidence()))
                            .orElse(Figures.NONE)));
            table.row(cells);
        }
        return table.build();
    }

    private static Optional<SubjectPower> powerOf(Subject subject, Comparison comparison) {
        return comparison.powers().stream()
                .filter(power -> power.subject().equals(subject))
                .findFirst();
    }

    private List<Chart> charts(Setting setting, SortedMap<Double, Comparison> byVolts) {
        if (byVolts.size() < 2) {
            return List.of();
        }
        Plot plot = Plot.of(
                "",
                Axis.linear(speech.text("axis.supply"), "V"),
                Axis.linear(speech.perWhat(setting.mode()), "W").withLower(0));
        for (int index = 0; index < subjects.size(); index++) {
            List<PlotPoint> points = new ArrayList<>();
            for (Comparison comparison : byVolts.values()) {
                powerOf(subjects.get(index), comparison)
                        .ifPresent(power -> points.add(new PlotPoint(
                                comparison.request().supplyVolts(),
                                power.watts().value(),
                                power.watts()
                                        .expandedUncertainty(
                                                comparison.request().confidence()))));
            }
            if (!points.isEmpty()) {
                String name = PlainText.clean(PlainText.shortened(name(subjects.get(index)), LEGEND_CHARACTERS));
                plot = plot.withSeries(new Series(name, points, Style.LINE_AND_MARKERS, index % Palette.TONES));
            }
        }
        return List.of(book.whole(plot, HEIGHT_RATIO));
    }

    /** Returns the differences of the later one from the earlier one of each pair. */
    private Table differences(Comparison main) {
        Table.Builder table = Table.titled("")
                .text(speech.text("comparison.pair"))
                .number(speech.text("difference"), "W")
                .number(speech.text("difference"), "%")
                .text(speech.text("comparison.statement"));
        List<SubjectDifference> all = main.differences();
        for (SubjectDifference each : all) {
            if (all.size() > MOST_PAIRS && !each.first().equals(main.powers().get(0))) {
                continue;
            }
            double watts = -each.watts().value();
            table.row(
                    speech.text(
                            "comparison.against",
                            PlainText.shortened(name(each.second().subject()), PAIR_CHARACTERS),
                            PlainText.shortened(name(each.first().subject()), PAIR_CHARACTERS)),
                    sign(watts) + speech.stated(watts, each.watts().expandedUncertainty(each.confidence())),
                    speech.signed(100 * watts / each.first().own().value(), 1),
                    speech.text(each.significant() ? "comparison.real" : "comparison.notShown"));
        }
        return table.build();
    }

    private static String sign(double value) {
        return value > 0 ? "+" : "";
    }
}
