// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Palette;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;

/**
 * The networks found as points: how near, how strong, and by colour and marker of how many parts.
 *
 * @param plot the chart
 * @param sources by the name of a series, the networks of its points
 */
record ErrorPowerPlot(Plot plot, Map<String, List<FoundNetwork>> sources) {
    private static final Messages TEXTS = Messages.of(ErrorPowerPlot.class);

    /** A smaller error counts as this one, so that the axis can be logarithmic. */
    private static final double LEAST_PERCENT = 0.001;

    private static final double PERCENT = 100;

    /** Returns the chart of the networks whose power limit is known, the chosen one ringed; empty when there is none. */
    static Optional<ErrorPowerPlot> of(List<FoundNetwork> found, Optional<FoundNetwork> chosen, Target target) {
        return Numbers.withPoint(() -> make(found, chosen, target));
    }

    private static Optional<ErrorPowerPlot> make(
            List<FoundNetwork> found, Optional<FoundNetwork> chosen, Target target) {
        Map<Integer, List<FoundNetwork>> byParts = new TreeMap<>();
        for (FoundNetwork each : found) {
            if (each.powerLimitWatts().isPresent()) {
                byParts.computeIfAbsent(each.parts(), parts -> new ArrayList<>())
                        .add(each);
            }
        }
        if (byParts.isEmpty()) {
            return Optional.empty();
        }
        Plot plot = Plot.of(
                "",
                Axis.log(TEXTS.text("plot.error"), "%").withLower(LEAST_PERCENT / 2),
                Axis.linear(TEXTS.text("plot.limit"), "W").withLower(0));
        Map<String, List<FoundNetwork>> sources = new LinkedHashMap<>();
        for (Map.Entry<Integer, List<FoundNetwork>> entry : byParts.entrySet()) {
            int parts = entry.getKey();
            String name = Words.count("plot.parts", parts);
            List<PlotPoint> points = entry.getValue().stream()
                    .map(each ->
                            new PlotPoint(percent(each), each.powerLimitWatts().orElseThrow()))
                    .toList();
            plot = plot.withSeries(new Series(name, points, Style.MARKERS, (parts - 1) % Palette.TONES));
            sources.put(name, List.copyOf(entry.getValue()));
        }
        if (target.powerWatts().isPresent()) {
            plot = plot.withMark(Mark.horizontal(target.powerWatts().getAsDouble(), TEXTS.text("plot.wanted")));
        }
        if (chosen.isPresent() && chosen.get().powerLimitWatts().isPresent()) {
            plot = plot.withMark(Mark.point(
                    percent(chosen.get()),
                    chosen.get().powerLimitWatts().getAsDouble(),
                    "",
                    MarkerShape.HOLLOW_CIRCLE));
        }
        return Optional.of(new ErrorPowerPlot(plot, sources));
    }

    private static double percent(FoundNetwork network) {
        return Math.max(LEAST_PERCENT, PERCENT * Math.abs(network.errorRatio()));
    }

    /** Returns the network of a point, or empty. */
    Optional<FoundNetwork> networkOf(String series, int index) {
        List<FoundNetwork> networks = sources.getOrDefault(series, List.of());
        return index >= 0 && index < networks.size() ? Optional.of(networks.get(index)) : Optional.empty();
    }
}
