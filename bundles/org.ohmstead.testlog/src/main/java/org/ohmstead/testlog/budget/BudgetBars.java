// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.budget;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.plot.Tick;

/** A budget as horizontal bars: each a tinted area with an outline, named on the upright axis. */
final class BudgetBars {
    private static final double HALF_THICKNESS = 0.36;
    private static final double MARGIN = 0.6;
    private static final double HEADROOM = 1.05;
    private static final int LINE_TONE = 0;
    private static final int SUM_TONE = 1;

    private static final int LONGEST_NAME = 34;

    private BudgetBars() {}

    static Plot of(ReadingBudget budget, BudgetWords words) {
        List<BudgetLine> lines = budget.lines().stream()
                .sorted(Comparator.comparingDouble((BudgetLine line) -> Math.abs(line.effectWatts())))
                .toList();
        List<Tick> ticks = new ArrayList<>();
        ticks.add(new Tick(0, words.text("bars.combined")));
        for (int i = 0; i < lines.size(); i++) {
            ticks.add(new Tick(i + 1, shortened(words.source(lines.get(i).source()))));
        }
        double combined = budget.result().standardUncertainty();
        double longest = Math.max(
                combined,
                lines.stream()
                        .mapToDouble(line -> Math.abs(line.effectWatts()))
                        .max()
                        .orElse(0));
        Axis watts =
                Axis.linear(words.text("bars.uncertainty"), "W").withRange(0, longest > 0 ? HEADROOM * longest : 1);
        Axis names = Axis.linear(words.text("bars.part"), "")
                .withRange(-MARGIN, lines.size() + MARGIN)
                .withTicks(ticks);
        Plot plot = bar(Plot.of("", watts, names), 0, combined, SUM_TONE);
        for (int i = 0; i < lines.size(); i++) {
            plot = bar(plot, i + 1, Math.abs(lines.get(i).effectWatts()), LINE_TONE);
        }
        return plot;
    }

    private static Plot bar(Plot plot, double place, double watts, int tone) {
        double low = place - HALF_THICKNESS;
        double high = place + HALF_THICKNESS;
        Band area = Band.of("", new double[] {0, watts}, new double[] {low, low}, new double[] {high, high}, tone);
        Series outline = Series.of(
                "", new double[] {0, watts, watts, 0, 0}, new double[] {low, low, high, high, low}, Style.LINE, tone);
        return plot.withBand(area).withSeries(outline);
    }

    private static String shortened(String name) {
        return name.length() <= LONGEST_NAME ? name : name.substring(0, LONGEST_NAME - 1) + "\u2026";
    }
}
