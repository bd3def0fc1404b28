// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Palette;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.plot.chart.ChartFonts;
import org.ohmstead.plot.chart.ChartLook;

/** Draws the small sample of line and marker by which a series or a band is known. */
public final class SeriesKey {
    private static final double SWATCH_SHARE = 0.62;
    private static final double STEM_DOT = 3;

    private final Look look;
    private final Graphics2D graphics;
    private final double width;
    private final double height;

    /** Makes a key of the size, in points, at the origin of the graphics. */
    public SeriesKey(Graphics2D graphics, ChartLook colours, double width, double height) {
        this.look = new Look(ChartFonts.standard(), colours);
        this.graphics = graphics;
        this.width = width;
        this.height = height;
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    }

    /** Draws the key of a series. */
    public void draw(Series series) {
        Style style = series.style();
        Color colour = look.tone(series.tone());
        if (style.hasBars()) {
            double side = Math.min(width, height) * SWATCH_SHARE;
            fill(colour, side, side);
            return;
        }
        if (style == Style.FILLED) {
            fill(look.areaFill(series.tone()), width, height * SWATCH_SHARE);
        }
        if (style.hasLine() || style == Style.STEMS) {
            graphics.setPaint(colour);
            graphics.setStroke(style == Style.STEMS ? Look.STEM_STROKE : SeriesLayer.lineStroke(style));
            graphics.draw(new Line2D.Double(0, height / 2, width, height / 2));
        }
        if (style.hasMarkers() || style == Style.STEMS) {
            boolean stems = style == Style.STEMS;
            MarkerShape marker = stems ? MarkerShape.CIRCLE : Palette.marker(series.tone());
            double size = stems ? STEM_DOT : Look.MARKER_SIZE;
            MarkerOutlines.draw(graphics, marker, width / 2, height / 2, size, colour, look.ground);
        }
    }

    /** Draws the key of a band. */
    public void draw(Band band) {
        fill(look.bandFill(band.tone()), width, height * SWATCH_SHARE);
    }

    private void fill(Color colour, double wide, double high) {
        graphics.setPaint(colour);
        graphics.fill(new Rectangle2D.Double((width - wide) / 2, (height - high) / 2, wide, high));
    }
}
