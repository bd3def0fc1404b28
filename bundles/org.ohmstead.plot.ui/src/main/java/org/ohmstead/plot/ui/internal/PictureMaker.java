// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import java.awt.image.BufferedImage;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.chart.AxisMapping;
import org.ohmstead.plot.chart.ChartFonts;
import org.ohmstead.plot.chart.ChartLayout;
import org.ohmstead.plot.chart.ChartOptions;
import org.ohmstead.plot.chart.ChartRanges;
import org.ohmstead.plot.chart.ChartRenderer;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ViewWindow;

/** Draws pictures away from the UI thread. Serves one canvas, one request after the other. */
public final class PictureMaker {
    private static final int UNSCALED = 100;
    /** Drawn on again and again, since it is large; it goes with its thread, which ends soon after it has nothing more to draw. */
    private static final ThreadLocal<BufferedImage> SCRATCH = new ThreadLocal<>();

    private final ChartRenderer renderer = new ChartRenderer(ChartFonts.bundled());
    private PlotSource homeSource;
    private ChartRanges home;

    /** Draws what is asked for. */
    public Picture make(Request request) {
        Optional<Plot> whole = Optional.empty();
        if (home == null || homeSource != request.source()) {
            whole = Optional.of(request.source().plot(Optional.empty(), request.width()));
            home = ChartRenderer.ranges(whole.get());
            homeSource = request.source();
        }
        Plot plot = request.window().isEmpty() && whole.isPresent()
                ? whole.get()
                : request.source().plot(request.window(), request.width());
        Plot inView = inView(plot, request.window(), home);
        Plot visible = without(inView, request.hidden());
        double scale = request.zoomPercent() / (double) UNSCALED;
        int width = (int) Math.round(request.width() * scale);
        int height = (int) Math.round(request.height() * scale);
        BufferedImage image = scratch(width, height);
        double perPoint = request.pixelsOfPoint();
        ChartLayout points = renderer.withDecimalComma(request.decimalComma())
                .draw(
                        visible,
                        image,
                        scale * perPoint,
                        request.width() / perPoint,
                        request.height() / perPoint,
                        new ChartOptions(request.look(), false));
        return new Picture(
                request,
                inView,
                visible,
                home,
                inPixels(points, perPoint),
                visible.series().stream().map(Track::new).toList(),
                Pixels.toImageData(image));
    }

    private static BufferedImage scratch(int width, int height) {
        BufferedImage image = SCRATCH.get();
        if (image == null || image.getWidth() != width || image.getHeight() != height) {
            image = Pixels.blank(width, height);
            SCRATCH.set(image);
        }
        return image;
    }

    /** Returns the plot with the ends of its axes as the window, or else the whole, has them, and the marks in view. */
    public static Plot inView(Plot plot, Optional<ViewWindow> window, ChartRanges home) {
        double lowerX = window.map(ViewWindow::lowerX).orElse(home.lowerX());
        double upperX = window.map(ViewWindow::upperX).orElse(home.upperX());
        boolean ownY = window.isPresent() && window.get().lowerY().isPresent();
        double lowerY = ownY ? window.get().lowerY().getAsDouble() : home.lowerY();
        double upperY = ownY ? window.get().upperY().getAsDouble() : home.upperY();
        Axis x = plot.x().withRange(lowerX, upperX);
        Axis y = plot.y().withRange(lowerY, upperY);
        return new Plot(
                plot.title(),
                x,
                y,
                plot.series(),
                plot.bands(),
                plot.marks().stream().filter(mark -> isInView(mark, x, y)).toList(),
                plot.note());
    }

    private static boolean isInView(Mark mark, Axis x, Axis y) {
        if (mark instanceof Mark.VerticalLine line) {
            return isInView(line.x(), x);
        }
        if (mark instanceof Mark.HorizontalLine line) {
            return isInView(line.y(), y);
        }
        Mark.Point point = (Mark.Point) mark;
        return isInView(point.x(), x) && isInView(point.y(), y);
    }

    private static boolean isInView(double value, Axis axis) {
        return value >= axis.lower().orElse(value) && value <= axis.upper().orElse(value);
    }

    /** Returns the plot without the series and bands of these names. */
    public static Plot without(Plot plot, Set<String> hidden) {
        return new Plot(
                plot.title(),
                plot.x(),
                plot.y(),
                plot.series().stream()
                        .filter(each -> !hidden.contains(each.name()))
                        .toList(),
                plot.bands().stream()
                        .filter(each -> !hidden.contains(each.name()))
                        .toList(),
                plot.marks(),
                plot.note());
    }

    private static ChartLayout inPixels(ChartLayout points, double perPoint) {
        return new ChartLayout(
                points.left() * perPoint,
                points.top() * perPoint,
                points.width() * perPoint,
                points.height() * perPoint,
                inPixels(points.x(), perPoint),
                inPixels(points.y(), perPoint));
    }

    private static AxisMapping inPixels(AxisMapping points, double perPoint) {
        return new AxisMapping(
                points.scale(),
                points.lower(),
                points.upper(),
                points.lowerPosition() * perPoint,
                points.upperPosition() * perPoint);
    }
}
