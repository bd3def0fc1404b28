// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.ohmstead.plot.chart.ChartRendererTest.HEIGHT;
import static org.ohmstead.plot.chart.ChartRendererTest.WIDTH;
import static org.ohmstead.plot.chart.ChartRendererTest.power;

import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import org.junit.jupiter.api.Test;

/** What a caller of the renderer may rely on beside the drawing itself. */
class ChartRendererContractTest {
    private final ChartRenderer renderer = new ChartRenderer();

    @Test
    void leavesTheGraphicsAsTheyWere() {
        BufferedImage image = new BufferedImage((int) WIDTH, (int) HEIGHT, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        AffineTransform before = AffineTransform.getTranslateInstance(3, 4);
        graphics.setTransform(before);
        renderer.draw(power(), graphics, WIDTH, HEIGHT);
        assertEquals(before, graphics.getTransform());
        assertNull(graphics.getClip());
        graphics.dispose();
    }

    @Test
    void sameTwiceGivesTheSamePng() {
        assertArrayEquals(renderer.toPng(power(), WIDTH, HEIGHT, 1), renderer.toPng(power(), WIDTH, HEIGHT, 1));
    }

    @Test
    void rejectsSizesAndNamesThatCannotBe() {
        assertThrows(IllegalArgumentException.class, () -> renderer.toPng(power(), 10, HEIGHT, 1));
        assertThrows(IllegalArgumentException.class, () -> renderer.toPng(power(), WIDTH, Double.NaN, 1));
        assertThrows(IllegalArgumentException.class, () -> renderer.toPng(power(), WIDTH, HEIGHT, 0));
        assertThrows(IllegalArgumentException.class, () -> renderer.toPng(power(), WIDTH, HEIGHT, 1000));
        assertThrows(IllegalArgumentException.class, () -> renderer.toSvg(power(), WIDTH, HEIGHT, "1\"x"));
        assertThrows(IllegalArgumentException.class, () -> ChartFonts.standard().withSize(0));
    }
}
