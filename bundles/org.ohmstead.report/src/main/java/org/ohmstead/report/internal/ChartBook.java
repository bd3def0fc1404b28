// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.ohmstead.model.PaperSize;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.chart.ChartRenderer;
import org.ohmstead.plot.chart.SvgOptions;

/** Collects the charts of a sheet, drawn as SVG for a screen or left to be drawn on the page. */
final class ChartBook {
    private static final double MARGINS_MILLIMETRES = 28;
    private static final double PIXELS_PER_MILLIMETRE = 96 / 25.4;
    // As the style sheet has them, of the whole width.
    private static final double HALF_RATIO = 0.4925;
    private static final double THIRD_RATIO = 0.326;
    private static final int SCREEN_WIDTH = 920;
    private static final int SCREEN_HALF_WIDTH = 440;
    private static final int SCREEN_THIRD_WIDTH = 300;

    private final Optional<ChartRenderer> renderer;
    private final List<Chart> charts = new ArrayList<>();

    private final int whole;
    private final int half;
    private final int third;

    private ChartBook(Optional<ChartRenderer> renderer, int whole, int half, int third) {
        this.renderer = renderer;
        this.whole = whole;
        this.half = half;
        this.third = third;
    }

    /** Returns a book whose charts are drawn at once, as SVG in a language. */
    static ChartBook forScreen(Locale language) {
        return new ChartBook(
                Optional.of(new ChartRenderer(SheetFonts.forCharts(), language)),
                SCREEN_WIDTH,
                SCREEN_HALF_WIDTH,
                SCREEN_THIRD_WIDTH);
    }

    /** Returns a book whose charts are drawn when their page is. */
    static ChartBook forPaper(PaperSize paper) {
        double width = Math.floor((paper.widthMillimetres() - MARGINS_MILLIMETRES) * PIXELS_PER_MILLIMETRE) - 1;
        return new ChartBook(Optional.empty(), (int) width, share(width, HALF_RATIO), share(width, THIRD_RATIO));
    }

    private static int share(double width, double ratio) {
        return (int) Math.round(width * ratio);
    }

    /** Adds a chart across the whole width; the height is a ratio of the width. */
    Chart whole(Plot plot, double heightRatio) {
        return add(plot, whole, heightRatio);
    }

    /** Adds a chart of half the width; the height is a ratio of its own width. */
    Chart half(Plot plot, double heightRatio) {
        return add(plot, half, heightRatio);
    }

    /** Adds a chart of a third of the width; the height is a ratio of its own width. */
    Chart third(Plot plot, double heightRatio) {
        return add(plot, third, heightRatio);
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
