// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Paint;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.text.TextUtils;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Scale;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.chart.ChartFonts;
import org.ohmstead.plot.chart.ChartLayout;
import org.ohmstead.plot.chart.ChartOptions;
import org.ohmstead.plot.chart.ChartRanges;

/** Turns a plot into a chart of the library: axes, heading, legend and note are its, the layers between are ours. */
public final class ChartAssembly {
    private static final double SIDE = 4;
    private static final double ROOM_FOR_LAST_NUMBER = 16;

    static {
        // The library would else draw the rotated label as outlines, which no reader of an SVG could search or hear.
        TextUtils.setUseDrawRotatedStringWorkaround(false);
    }

    private final Plot plot;
    private final Look look;
    private final boolean legend;
    private final boolean decimalComma;
    private Optional<PixelGround> ground = Optional.empty();

    /** Makes the assembly of one plot; the numbers along its axes have a decimal comma or a point. */
    public ChartAssembly(Plot plot, ChartFonts fonts, ChartOptions options, boolean decimalComma) {
        this.plot = Objects.requireNonNull(plot, "plot");
        this.look = new Look(fonts, options.look());
        this.legend = options.legend();
        this.decimalComma = decimalComma;
    }

    /** Paints the image that the graphics draw on, and lets what is drawn faster into its pixels be drawn so. */
    public ChartAssembly onto(BufferedImage image) {
        ground = Optional.of(PixelGround.of(image, look.ground.getRGB() & 0xFFFFFF));
        return this;
    }

    /** Draws the chart into the rectangle and returns where things are. */
    public ChartLayout draw(Graphics2D graphics, Rectangle2D place) {
        XYPlot between = xyPlot();
        JFreeChart chart = new JFreeChart(null, look.title, between, false);
        chart.setBackgroundPaint(ground.isPresent() ? null : look.ground);
        chart.setPadding(new RectangleInsets(SIDE, SIDE, SIDE, ROOM_FOR_LAST_NUMBER));
        chart.setAntiAlias(true);
        chart.setTextAntiAlias(true);
        chart.getRenderingHints().put(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        chart.getRenderingHints().put(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
        if (!plot.title().isBlank()) {
            chart.addSubtitle(text(plot.title(), look.title, look.ink, RectangleEdge.TOP));
        }
        plot.note().ifPresent(note -> chart.addSubtitle(text(note, look.note, look.mutedInk, RectangleEdge.BOTTOM)));
        if (legend) {
            Legend.of(plot, look).ifPresent(chart::addSubtitle);
        }
        ChartRenderingInfo info = new ChartRenderingInfo();
        chart.draw(graphics, place, info);
        return layout(between, info.getPlotInfo().getDataArea());
    }

    /** Returns what the axes of the plot show. */
    public static ChartRanges ranges(Plot plot) {
        PlotRanges ranges = new PlotRanges(plot);
        return new ChartRanges(
                ranges.x().lower(),
                ranges.x().upper(),
                ranges.y().lower(),
                ranges.y().upper());
    }

    private static ChartLayout layout(XYPlot between, Rectangle2D area) {
        return new ChartLayout(
                area.getX(),
                area.getY(),
                area.getWidth(),
                area.getHeight(),
                LayerAnnotation.xMapping(between.getDomainAxis(), area),
                LayerAnnotation.yMapping(between.getRangeAxis(), area));
    }

    private XYPlot xyPlot() {
        PlotRanges ranges = new PlotRanges(plot);
        ValueAxis domain = axis(plot.x(), ranges.x());
        ValueAxis range = axis(plot.y(), ranges.y());
        XYPlot between = new LabPlot(domain, range);
        between.setRangeAxisLocation(AxisLocation.BOTTOM_OR_LEFT);
        between.setBackgroundPaint(null);
        between.setOutlineVisible(false);
        between.setInsets(RectangleInsets.ZERO_INSETS);
        between.setAxisOffset(RectangleInsets.ZERO_INSETS);
        between.setNoDataMessage(null);
        between.setDomainZeroBaselineVisible(false);
        boolean zeroInside = ranges.y().lower() < 0 && ranges.y().upper() > 0;
        between.setRangeZeroBaselineVisible(plot.y().scale() == Scale.LINEAR && zeroInside);
        between.setRangeZeroBaselinePaint(look.zeroLine);
        between.setRangeZeroBaselineStroke(Look.GRID_STROKE);
        styleGrid(between);
        addLayers(between);
        return between;
    }

    private void styleGrid(XYPlot between) {
        between.setDomainGridlinesVisible(
                plot.series().stream().noneMatch(each -> each.style().hasBars()));
        between.setDomainGridlinePaint(look.grid);
        between.setDomainGridlineStroke(Look.GRID_STROKE);
        between.setRangeGridlinePaint(look.grid);
        between.setRangeGridlineStroke(Look.GRID_STROKE);
        between.setDomainMinorGridlinesVisible(true);
        between.setDomainMinorGridlinePaint(look.minorGrid);
        between.setDomainMinorGridlineStroke(Look.GRID_STROKE);
        between.setRangeMinorGridlinesVisible(true);
        between.setRangeMinorGridlinePaint(look.minorGrid);
        between.setRangeMinorGridlineStroke(Look.GRID_STROKE);
    }

    private void addLayers(XYPlot between) {
        for (Band band : plot.bands()) {
            between.addAnnotation(new LayerAnnotation(look, ground, new BandLayer(band)), false);
        }
        List<Series> bars =
                plot.series().stream().filter(each -> each.style().hasBars()).toList();
        if (!bars.isEmpty()) {
            between.addAnnotation(new LayerAnnotation(look, ground, new BarLayer(bars)), false);
        }
        for (Series series : plot.series()) {
            if (!series.style().hasBars()) {
                between.addAnnotation(new LayerAnnotation(look, ground, new SeriesLayer(series)), false);
            }
        }
        between.addAnnotation(new LayerAnnotation(look, ground, new MarkLayer(plot)), false);
        between.addAnnotation(new LayerAnnotation(look, ground, new TextLayer(plot, look.mark)), false);
    }

    private ValueAxis axis(Axis data, AxisRange.Ends ends) {
        ValueAxis axis = data.scale() == Scale.LOG
                ? new PlannedLogAxis(data, decimalComma)
                : new PlannedLinearAxis(data, decimalComma);
        axis.setRange(ends.lower(), ends.upper());
        axis.setLabelFont(look.label);
        axis.setLabelPaint(look.ink);
        axis.setLabelInsets(new RectangleInsets(2, 2, 1, 2));
        axis.setTickLabelFont(look.tick);
        axis.setTickLabelPaint(look.ink);
        axis.setTickLabelInsets(new RectangleInsets(2, 5, 2, 3));
        axis.setAxisLinePaint(look.axis);
        axis.setAxisLineStroke(Look.AXIS_STROKE);
        axis.setTickMarkPaint(look.axis);
        axis.setTickMarkStroke(Look.AXIS_STROKE);
        axis.setTickMarkInsideLength(0);
        axis.setTickMarkOutsideLength((float) Look.TICK_LENGTH);
        axis.setMinorTickMarksVisible(true);
        axis.setMinorTickMarkInsideLength(0);
        axis.setMinorTickMarkOutsideLength((float) Look.MINOR_TICK_LENGTH);
        return axis;
    }

    private static TextTitle text(String text, Font font, Paint paint, RectangleEdge edge) {
        TextTitle title = new TextTitle(text, font);
        title.setPaint(paint);
        title.setPosition(edge);
        title.setHorizontalAlignment(HorizontalAlignment.LEFT);
        title.setTextAlignment(HorizontalAlignment.LEFT);
        boolean above = edge == RectangleEdge.TOP;
        title.setPadding(above ? new RectangleInsets(0, 2, 5, 2) : new RectangleInsets(2, 2, 0, 2));
        return title;
    }
}
