// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Set;
import org.eclipse.swt.graphics.ImageData;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Palette;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.chart.ChartLook;
import org.ohmstead.plot.ui.internal.Picture;
import org.ohmstead.plot.ui.internal.PictureMaker;
import org.ohmstead.plot.ui.internal.Request;

class ScaleTest {
    /** A mark of known place, found in the pixels where the mapping says it is, at every scale of the screen. */
    @ParameterizedTest
    @ValueSource(ints = {100, 125, 150, 200, 300})
    void valuesLieWhereTheMappingSays(int zoomPercent) {
        Plot plot = Plot.of(
                        "",
                        Axis.linear("x", "").withRange(0, 10),
                        Axis.linear("y", "").withRange(0, 10))
                .withMark(Mark.point(7, 3, "", MarkerShape.CIRCLE, 1));
        Picture picture = new PictureMaker()
                .make(new Request(
                        PlotSource.of(plot), Optional.empty(), 600, 400, zoomPercent, 1.25, ChartLook.LIGHT, Set.of()));
        ImageData pixels = picture.pixels();
        assertEquals(6 * zoomPercent, pixels.width);
        assertEquals(4 * zoomPercent, pixels.height);
        double sumX = 0;
        double sumY = 0;
        int count = 0;
        for (int y = 0; y < pixels.height; y++) {
            for (int x = 0; x < pixels.width; x++) {
                if ((pixels.getPixel(x, y) & 0xFFFFFF) == Palette.colour(1)) {
                    sumX += x + 0.5;
                    sumY += y + 0.5;
                    count++;
                }
            }
        }
        assertTrue(count > 20, "count is " + count);
        double scale = zoomPercent / 100.0;
        // The centre of the disc; half a pixel of the screen for its ragged edge.
        assertEquals(picture.layout().x().toPosition(7), sumX / count / scale, 0.5 / scale);
        assertEquals(picture.layout().y().toPosition(3), sumY / count / scale, 0.5 / scale);
    }
}
