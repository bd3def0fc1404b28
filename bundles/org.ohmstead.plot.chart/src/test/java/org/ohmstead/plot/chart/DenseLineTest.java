// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;

/** Lines of many ups and downs are drawn straight into pixels: they are held against the same drawn through graphics. */
class DenseLineTest {
    private static final int WIDTH = 640;
    private static final int HEIGHT = 400;
    /** Of 255: what eight cuts and the renderer's own eight rows may differ by in a pixel at the edge of a stroke. */
    private static final int MOST_DIFFERENCE = 40;

    private static final int END = 4;

    private static final ChartOptions DARK = new ChartOptions(ChartLook.DARK, false);

    private final ChartRenderer renderer = new ChartRenderer(ChartFonts.bundled());

    private static Plot plot(int count, IntToDoubleFunction y) {
        double[] x = new double[count];
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            x[i] = i;
            values[i] = y.applyAsDouble(i);
        }
        return Plot.of("", Axis.linear("x", ""), Axis.linear("y", "").withRange(-1.2, 1.2))
                .withSeries(Series.of("", x, values, Style.LINE, 0));
    }

    private static BufferedImage blank() {
        return new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
    }

    private BufferedImage fast(Plot plot, double scale, ChartOptions options) {
        BufferedImage image = blank();
        renderer.draw(plot, image, scale, WIDTH / scale, HEIGHT / scale, options);
        return image;
    }

    private BufferedImage throughGraphics(Plot plot, double scale, ChartOptions options) {
        BufferedImage image = blank();
        Graphics2D graphics = image.createGraphics();
        graphics.scale(scale, scale);
        renderer.draw(plot, graphics, WIDTH / scale, HEIGHT / scale, options);
        graphics.dispose();
        return image;
    }

    private static int[] pixels(BufferedImage image) {
        return image.getRGB(0, 0, WIDTH, HEIGHT, null, 0, WIDTH);
    }

    private static int difference(int one, int other) {
        int most = 0;
        for (int shift = 0; shift < 24; shift += 8) {
            most = Math.max(most, Math.abs((one >> shift & 0xFF) - (other >> shift & 0xFF)));
        }
        return most;
    }

    /** Between the axes without a few columns at either side, where the very ends of the line are round instead of cut off. */
    private long different(BufferedImage one, BufferedImage other, Plot plot, double scale) {
        ChartLayout layout = renderer.draw(plot, blank(), scale, WIDTH / scale, HEIGHT / scale, DARK);
        int[] first = pixels(one);
        int[] second = pixels(other);
        assertFalse(Arrays.equals(first, second), "both were drawn in the same way");
        long count = 0;
        for (int i = 0; i < first.length; i++) {
            double fromLeft = i % WIDTH - layout.left() * scale;
            boolean ends = Math.abs(fromLeft) < END || Math.abs(fromLeft - layout.width() * scale) < END;
            count += !ends && difference(first[i], second[i]) > MOST_DIFFERENCE ? 1 : 0;
        }
        return count;
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 4.0 / 3, 2})
    void aToneLooksAsDrawnThroughGraphics(double scale) {
        // 240 points over at least 280 points of width are not thinned in either way: 20 cycles, 40 ways up and down.
        Plot plot = plot(240, i -> Math.sin(2 * Math.PI * i / 12));
        assertEquals(0, different(fast(plot, scale, DARK), throughGraphics(plot, scale, DARK), plot, scale));
    }

    @Test
    void noiseBeyondTheAxisLooksAsDrawnThroughGraphicsAndStaysInsideTheAxes() {
        Random random = new Random(5);
        Plot plot = plot(300, i -> random.nextGaussian() * (i % 50 == 0 ? 1e6 : 1));
        assertEquals(0, different(fast(plot, 1, DARK), throughGraphics(plot, 1, DARK), plot, 1));
    }

    @Test
    void fewUpsAndDownsAreDrawnThroughGraphicsPixelForPixel() {
        Plot plot = plot(300, i -> Math.sin(2 * Math.PI * i / 150));
        assertArrayEquals(pixels(throughGraphics(plot, 1, DARK)), pixels(fast(plot, 1, DARK)));
    }

    @Test
    void everySpikeOfASingleSampleIsSeen() {
        int count = 200_000;
        Random random = new Random(3);
        double[] noise = random.doubles(count, -0.3, 0.3).toArray();
        for (int spike = 0; spike < 40; spike++) {
            double[] samples = noise.clone();
            int at = random.nextInt(count);
            samples[at] = 1;
            Plot plot = plot(count, i -> samples[i]);
            BufferedImage image = blank();
            ChartLayout layout = renderer.draw(plot, image, 1, WIDTH, HEIGHT, DARK);
            int x = (int) layout.x().toPosition(at);
            int y = (int) layout.y().toPosition(0.8);
            int best = 255;
            for (int column = Math.max(0, x - 1); column <= Math.min(WIDTH - 1, x + 1); column++) {
                best = Math.min(best, difference(image.getRGB(column, y), ChartLook.DARK.tone(0)));
            }
            assertTrue(best < 128, "the spike at sample " + at + " is faint by " + best);
        }
    }

    @Test
    void aRecordOfManyCyclesIsSolid() {
        Random random = new Random(9);
        // As thinned for the width: of every run the lowest and the highest, wherever they were in it.
        Plot plot = plot(2 * WIDTH, i -> i % 2 == 0 ? 1 : -1);
        double[] x = random.doubles(2 * WIDTH, 0, 1000).sorted().toArray();
        double[] y = new double[x.length];
        for (int i = 0; i < y.length; i++) {
            y[i] = i % 2 == 0 ? 1 : -1;
        }
        for (Series series : new Series[] {plot.series().get(0), Series.of("", x, y, Style.LINE, 0)}) {
            Plot wave = Plot.of("", Axis.linear("x", ""), Axis.linear("y", "").withRange(-1.2, 1.2))
                    .withSeries(series);
            BufferedImage image = blank();
            ChartLayout layout = renderer.draw(wave, image, 1, WIDTH, HEIGHT, DARK);
            int row = (int) layout.y().toPosition(0.3);
            int solid = 0;
            for (int column = 0; column < WIDTH; column++) {
                solid += difference(image.getRGB(column, row), ChartLook.DARK.tone(0)) < 8 ? 1 : 0;
            }
            assertTrue(solid > 0.8 * layout.width(), solid + " columns of " + layout.width());
        }
    }

    @Test
    void rejectsAnImageThatItCannotDrawInto() {
        Plot plot = plot(10, i -> 0);
        BufferedImage bytes = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_3BYTE_BGR);
        assertThrows(
                IllegalArgumentException.class, () -> renderer.draw(plot, bytes, 1, WIDTH, HEIGHT, ChartOptions.PAPER));
        BufferedImage part = blank().getSubimage(10, 10, 300, 200);
        assertThrows(IllegalArgumentException.class, () -> renderer.draw(plot, part, 1, 300, 200, ChartOptions.PAPER));
        assertThrows(
                IllegalArgumentException.class,
                () -> renderer.draw(plot, blank(), 0, WIDTH, HEIGHT, ChartOptions.PAPER));
    }
}
