// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.plot.chart.ChartRendererTest.HEIGHT;
import static org.ohmstead.plot.chart.ChartRendererTest.WIDTH;
import static org.ohmstead.plot.chart.ChartRendererTest.power;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Palette;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;

/** The ways out that screens and files need beside SVG and PNG on white. */
class ChartOutputTest {
    private final ChartRenderer renderer = new ChartRenderer(ChartFonts.bundled());

    private BufferedImage drawn(Plot plot, ChartOptions options) {
        BufferedImage image = new BufferedImage((int) WIDTH, (int) HEIGHT, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        renderer.draw(plot, graphics, WIDTH, HEIGHT, options);
        graphics.dispose();
        return image;
    }

    private static int count(BufferedImage image, int colour) {
        int count = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                count += (image.getRGB(x, y) & 0xFFFFFF) == colour ? 1 : 0;
            }
        }
        return count;
    }

    @Test
    void pdfIsOnePageOfTheSizeWithTextsThatCanBeSearched() throws IOException {
        try (PDDocument document = Loader.loadPDF(renderer.toPdf(power(), WIDTH, HEIGHT))) {
            assertEquals(1, document.getNumberOfPages());
            assertEquals(WIDTH, document.getPage(0).getMediaBox().getWidth());
            assertEquals(HEIGHT, document.getPage(0).getMediaBox().getHeight());
            assertEquals("Power", document.getDocumentInformation().getTitle());
            String text = new PDFTextStripper().getText(document);
            assertTrue(text.contains("Supply (V)"), text);
            assertTrue(text.replaceAll("\\s", "").contains("Power(W)"), text);
            assertTrue(text.contains("rated 75 W"), text);
            assertTrue(text.contains("4 ohm"), text);
        }
    }

    @Test
    void darkChartIsDarkAllOver() {
        BufferedImage image = drawn(power(), new ChartOptions(ChartLook.DARK, true));
        assertEquals(ChartLook.DARK.background(), image.getRGB(1, 1) & 0xFFFFFF);
        assertEquals(0, count(image, 0xFFFFFF));
        assertEquals(0, count(image, Palette.colour(0)));
        assertTrue(count(image, ChartLook.DARK.tone(0)) > 40);
    }

    @Test
    void withoutLegendTheAxesHaveItsRoom() {
        BufferedImage image = new BufferedImage((int) WIDTH, (int) HEIGHT, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        ChartLayout with = renderer.draw(power(), graphics, WIDTH, HEIGHT, ChartOptions.PAPER);
        ChartLayout without = renderer.draw(power(), graphics, WIDTH, HEIGHT, new ChartOptions(ChartLook.LIGHT, false));
        graphics.dispose();
        assertTrue(without.height() > with.height() + 8, with + " " + without);
    }

    @Test
    void rangesAreThoseThatAreDrawn() {
        Plot plot = Plot.of("", Axis.linear("x", ""), Axis.linear("y", ""))
                .withSeries(Series.of("", new double[] {1, 2, 7}, new double[] {20, 300, 421}, Style.LINE, 0));
        BufferedImage image = new BufferedImage((int) WIDTH, (int) HEIGHT, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        ChartLayout layout = renderer.draw(plot, graphics, WIDTH, HEIGHT);
        graphics.dispose();
        ChartRanges ranges = ChartRenderer.ranges(plot);
        assertEquals(layout.x().lower(), ranges.lowerX());
        assertEquals(layout.x().upper(), ranges.upperX());
        assertEquals(layout.y().lower(), ranges.lowerY());
        assertEquals(layout.y().upper(), ranges.upperY());
    }

    @Test
    void lineZoomedAMillionfoldIsDrawnWhereItIs() {
        // y = x, seen through a window of a millionth of it around 0.3: still the diagonal, though off centre.
        double half = 0.5e-6;
        Plot plot = Plot.of(
                        "",
                        Axis.linear("x", "").withRange(0.3 - half, 0.3 + half),
                        Axis.linear("y", "").withRange(0.3 - half, 0.3 + half))
                .withSeries(Series.of("", new double[] {0, 1}, new double[] {0, 1}, Style.LINE, 0));
        BufferedImage image = drawn(plot, new ChartOptions(ChartLook.LIGHT, false));
        Graphics2D graphics = image.createGraphics();
        ChartLayout layout = renderer.draw(plot, graphics, WIDTH, HEIGHT, new ChartOptions(ChartLook.LIGHT, false));
        graphics.dispose();
        int middleX = (int) Math.round(layout.left() + layout.width() / 2);
        int middleY = (int) Math.round(layout.top() + layout.height() / 2);
        int darkest = 255;
        for (int y = middleY - 2; y <= middleY + 2; y++) {
            darkest = Math.min(darkest, image.getRGB(middleX, y) >> 16 & 0xFF);
        }
        assertTrue(darkest < 120, "no line in the middle, the darkest red is " + darkest);
    }

    @Test
    void keyIsDrawnInTheColourOfItsSeries() {
        BufferedImage image = new BufferedImage(24, 14, BufferedImage.TYPE_INT_RGB);
        for (Style style : Style.values()) {
            Graphics2D graphics = image.createGraphics();
            Series series = new Series("a", List.of(), style, 1);
            ChartRenderer.drawKey(series, graphics, ChartLook.LIGHT, 24, 14);
            graphics.dispose();
            assertTrue(count(image, 0) < 24 * 14, style.toString());
            image = new BufferedImage(24, 14, BufferedImage.TYPE_INT_RGB);
        }
    }
}
