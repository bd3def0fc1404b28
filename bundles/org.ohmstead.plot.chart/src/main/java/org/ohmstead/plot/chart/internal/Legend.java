// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.block.ColumnArrangement;
import org.jfree.chart.block.FlowArrangement;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.VerticalAlignment;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Palette;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;

/** The legend: one unframed row, or as many as needed, below the axes; named series first, then named bands. */
final class Legend {
    private static final double LINE_LENGTH = 16;
    private static final double BAND_HEIGHT = 8;

    private Legend() {}

    static Optional<LegendTitle> of(Plot plot, Look look) {
        LegendItemCollection items = new LegendItemCollection();
        for (Series series : plot.series()) {
            if (!series.name().isBlank()) {
                items.add(item(series, look));
            }
        }
        for (Band band : plot.bands()) {
            if (!band.name().isBlank()) {
                items.add(item(band.name(), swatch(), true, look.bandFill(band.tone()), false, Look.FINE_STROKE));
            }
        }
        if (items.getItemCount() == 0) {
            return Optional.empty();
        }
        LegendTitle legend = new LegendTitle(
                () -> items,
                new FlowArrangement(HorizontalAlignment.LEFT, VerticalAlignment.CENTER, 5, 0),
                new ColumnArrangement(HorizontalAlignment.LEFT, VerticalAlignment.CENTER, 0, 2));
        legend.setPosition(RectangleEdge.BOTTOM);
        legend.setHorizontalAlignment(HorizontalAlignment.LEFT);
        legend.setItemFont(look.label);
        legend.setItemPaint(look.ink);
        legend.setLegendItemGraphicPadding(new RectangleInsets(1, 1, 1, 1));
        legend.setItemLabelPadding(new RectangleInsets(0, 3, 0, 2));
        legend.setPadding(new RectangleInsets(1, 0, 0, 0));
        return Optional.of(legend);
    }

    private static LegendItem item(Series series, Look look) {
        Color colour = look.tone(series.tone());
        Style style = series.style();
        if (style.hasBars()) {
            return item(series.name(), new Rectangle2D.Double(-4, -4, 8, 8), true, colour, false, Look.FINE_STROKE);
        }
        boolean stems = style == Style.STEMS;
        MarkerShape marker = style.hasMarkers() ? Palette.marker(series.tone()) : MarkerShape.CIRCLE;
        Shape outline =
                style == Style.FILLED ? swatch() : MarkerOutlines.outline(marker, 0, 0, stems ? 3 : Look.MARKER_SIZE);
        boolean outlineOnly = !marker.isFilled();
        boolean shapeVisible = hasShape(style);
        Color fill = style == Style.FILLED ? look.areaFill(series.tone()) : colour;
        return new LegendItem(
                series.name(),
                null,
                null,
                null,
                shapeVisible,
                outline,
                shapeVisible && (!outlineOnly || marker == MarkerShape.HOLLOW_CIRCLE),
                outlineOnly ? look.ground : fill,
                outlineOnly,
                colour,
                Look.OUTLINE_STROKE,
                style.hasLine() || stems,
                new Line2D.Double(-LINE_LENGTH / 2, 0, LINE_LENGTH / 2, 0),
                stems ? Look.STEM_STROKE : SeriesLayer.lineStroke(style),
                colour);
    }

    private static LegendItem item(
            String name, Shape shape, boolean filled, Color fill, boolean outlined, BasicStroke stroke) {
        return new LegendItem(
                name, null, null, null, true, shape, filled, fill, outlined, fill, stroke, false, shape, stroke, fill);
    }

    private static boolean hasShape(Style style) {
        return style.hasMarkers() || style == Style.STEMS || style == Style.FILLED;
    }

    private static Shape swatch() {
        return new Rectangle2D.Double(-LINE_LENGTH / 2, -BAND_HEIGHT / 2, LINE_LENGTH, BAND_HEIGHT);
    }
}
