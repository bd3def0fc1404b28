// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.chart.ChartRenderer;
import org.ohmstead.plot.chart.SvgOptions;

/** Collects the charts of a sheet, drawn as SVG for a screen or left to be drawn on the page. */
final class ChartBook {
    // The page's text width at 96 pixels per inch: 210 mm less two margins of 14 mm.
    private static final int PAGE_WIDTH = 686;
    private static final int PAGE_HALF_WIDTH = 338;
    private static final int PAGE_THIRD_WIDTH = 224;
    private static final int SCREEN_WIDTH = 920;
    private static final int SCREEN_HALF_WIDTH = 440;
    private static final int SCREEN_THIRD_WIDTH = 300;

    private final Optional<ChartRenderer> renderer;
    private final List<Chart> charts = new ArrayList<>();

    private ChartBook(Optional<ChartRenderer> renderer) {
        this.renderer = renderer;
    }

    /** Returns a book whose charts are drawn at once, as SVG. */
    static ChartBook forScreen() {
        return new ChartBook(Optional.of(new ChartRenderer(SheetFonts.forCharts())));
    }

    /** Returns a book whose charts are drawn when their page is. */
    static ChartBook forPaper() {
        return new ChartBook(Optional.empty());
    }

    /** Adds a chart across the whole width; the height is a ratio of the width. */
    Chart whole(Plot plot, double heightRatio) {
        return add(plot, renderer.isPresent() ? SCREEN_WIDTH : PAGE_WIDTH, heightRatio);
    }

    /** Adds a chart of half the width; the height is a ratio of its own width. */
    Chart half(Plot plot, double heightRatio) {
        return add(plot, renderer.isPresent() ? SCREEN_HALF_WIDTH : PAGE_HALF_WIDTH, heightRatio);
    }

    /** Adds a chart of a third of the width; the height is a ratio of its own width. */
    Chart third(Plot plot, double heightRatio) {
        return add(plot, renderer.isPresent() ? SCREEN_THIRD_WIDTH : PAGE_THIRD_WIDTH, heightRatio);
    }

    private Chart add(Plot plot, int width, double heightRatio) {
        int height = (int) Math.round(width * heightRatio);
        String id = "plot-" + (charts.size() + 1);
        String svg = renderer.map(drawn -> drawn.toSvg(plot, width, height, SvgOptions.responsive(id)))
                .orElse("");
        Chart chart = new Chart(id, plot, width, height, svg);
        charts.add(chart);
        return chart;
    }

    List<Chart> charts() {
        return List.copyOf(charts);
    }
}
