// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.graphics.ImageData;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.plot.chart.ChartLook;
import org.ohmstead.plot.chart.ChartRenderer;

/**
 * One entry of the legend; equal ones look alike.
 *
 * @param name what it says
 * @param style how the series is drawn; empty for a band
 * @param tone the index of the colour
 */
record LegendKey(String name, Optional<Style> style, int tone) {
    private static final double PIXELS_OF_POINT = 1.25;

    static LegendKey of(Series series) {
        return new LegendKey(series.name(), Optional.of(series.style()), series.tone());
    }

    static LegendKey of(Band band) {
        return new LegendKey(band.name(), Optional.empty(), band.tone());
    }

    /** Returns the sample of line and marker, as large as given in unscaled pixels, for a screen of the zoom. */
    ImageData sample(ChartLook look, int width, int height, int zoomPercent) {
        double scale = zoomPercent / 100.0;
        BufferedImage image = Pixels.blank((int) Math.round(width * scale), (int) Math.round(height * scale));
        Graphics2D graphics = image.createGraphics();
        try {
            graphics.setColor(new Color(look.background()));
            graphics.fillRect(0, 0, image.getWidth(), image.getHeight());
            graphics.scale(scale * PIXELS_OF_POINT, scale * PIXELS_OF_POINT);
            double wide = width / PIXELS_OF_POINT;
            double high = height / PIXELS_OF_POINT;
            if (style.isPresent()) {
                Series empty = new Series(name, List.of(), style.get(), tone);
                ChartRenderer.drawKey(empty, graphics, look, wide, high);
            } else {
                ChartRenderer.drawKey(new Band(name, List.of(), tone), graphics, look, wide, high);
            }
        } finally {
            graphics.dispose();
        }
        return Pixels.toImageData(image);
    }
}
