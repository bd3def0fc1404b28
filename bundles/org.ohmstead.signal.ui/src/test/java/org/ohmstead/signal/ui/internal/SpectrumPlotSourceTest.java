// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.ui.ViewWindow;
import org.ohmstead.signal.Window;
import org.ohmstead.signal.ui.internal.SpectrumPlotSource.Reference;

class SpectrumPlotSourceTest {
    private static final int WIDTH = 640;
    private static final double LEVEL_TOLERANCE_DB = 0.02;

    private static SpectrumPlotSource source(LoadedCapture capture, Reference reference) {
        return new SpectrumPlotSource(capture, capture.channels(), reference, OptionalDouble.empty());
    }

    /** 10 V peak with the second harmonic at -40 dB and the third at -60 dB. */
    private static double[] known(int size) {
        return Waves.of(
                size, 1_000, phase -> 10 * Math.sin(phase) + 0.1 * Math.sin(2 * phase) + 0.01 * Math.sin(3 * phase));
    }

    private static List<Mark.Point> harmonics(Plot plot) {
        return plot.marks().stream()
                .filter(Mark.Point.class::isInstance)
                .map(Mark.Point.class::cast)
                .toList();
    }

    @Test
    void marksHarmonicsAtTheirLevelsBelowTheFundamental(@TempDir Path folder) {
        LoadedCapture capture = Waves.load(folder, Waves.withNoise(known(9_600), 1e-3, 13));
        Plot plot = source(capture, Reference.FUNDAMENTAL).plot(Optional.empty(), WIDTH);
        List<Mark.Point> marks = harmonics(plot);
        assertEquals(2, marks.size(), "only what stands out of the noise is marked");
        assertEquals(2_000, marks.get(0).x(), 0.01);
        assertEquals(-40, marks.get(0).y(), LEVEL_TOLERANCE_DB);
        assertEquals("H2 -40", marks.get(0).text());
        assertEquals(-60, marks.get(1).y(), LEVEL_TOLERANCE_DB);
        assertEquals("dB re fundamental", plot.y().unit());
    }

    @Test
    void refersToOneVoltOnDemand(@TempDir Path folder) {
        Plot plot = source(Waves.load(folder, known(9_600)), Reference.VOLT).plot(Optional.empty(), WIDTH);
        // 20 log10(10 / sqrt 2) = 16.99 dBV.
        double fundamentalDbv = 20 * Math.log10(10 / Math.sqrt(2));
        assertEquals(fundamentalDbv - 40, harmonics(plot).get(0).y(), LEVEL_TOLERANCE_DB);
        double highest = plot.series().get(0).points().stream()
                .mapToDouble(PlotPoint::y)
                .max()
                .orElseThrow();
        // 9600 samples hold 200 whole cycles, so the tone stands in the middle of a bin.
        assertEquals(fundamentalDbv, highest, LEVEL_TOLERANCE_DB);
    }

    /** White noise of s volts RMS has s^2 2 B / N in a bin: N samples, B the window's noise bandwidth in bins. */
    @Test
    void drawsTheNoiseFloorWhereWhiteNoiseIs(@TempDir Path folder) {
        int size = 1 << 16;
        LoadedCapture capture = Waves.load(folder, Waves.withNoise(known(size), 0.01, 7));
        double expected = 10 * Math.log10(1e-4 * 2 * Window.BLACKMAN_HARRIS_4.noiseBandwidthBins() / size);
        assertEquals(expected, capture.channels().get(0).spectrum().floorDbv(), 0.3);
        double drawn = source(capture, Reference.VOLT).plot(Optional.empty(), WIDTH).marks().stream()
                .filter(Mark.HorizontalLine.class::isInstance)
                .mapToDouble(mark -> ((Mark.HorizontalLine) mark).y())
                .findFirst()
                .orElseThrow();
        assertEquals(expected, drawn, 0.3);
    }

    /** Truth: going through all bins of the window one by one. */
    @Test
    void losesNoBinInAnyWindow(@TempDir Path folder) {
        LoadedCapture capture = Waves.load(folder, Waves.withNoise(known(1 << 18), 0.01, 11));
        SpectrumPlotSource source = source(capture, Reference.VOLT);
        SpectrumTrace spectrum = capture.channels().get(0).spectrum();
        Random random = new Random(3);
        for (int trial = 0; trial < 40; trial++) {
            double lower = 10 * Math.pow(10, 3 * random.nextDouble());
            double upper = Math.min(24_000, lower * (1.01 + 5 * random.nextDouble()));
            List<PlotPoint> points = source.plot(Optional.of(ViewWindow.ofX(lower, upper)), WIDTH)
                    .series()
                    .get(0)
                    .points();
            assertTrue(points.size() <= 2 * WIDTH + 4, points.size() + " points");
            double high = Double.NEGATIVE_INFINITY;
            double low = Double.POSITIVE_INFINITY;
            for (int i = 0; i < spectrum.levelsDbv().size(); i++) {
                if (spectrum.frequencyHz(i) >= lower && spectrum.frequencyHz(i) <= upper) {
                    high = Math.max(high, spectrum.levelsDbv().valueAt(i));
                    low = Math.min(low, spectrum.levelsDbv().valueAt(i));
                }
            }
            double highest = high;
            double lowest = low;
            assertTrue(points.stream().anyMatch(point -> point.y() == highest));
            assertTrue(points.stream().anyMatch(point -> point.y() == lowest));
        }
    }

    /** At 40 Hz in 0.1 s a harmonic follows every 4 bins, which is as wide as the window spreads a line. */
    @Test
    void drawsNoFloorWhereTheHarmonicsLieTooClose(@TempDir Path folder) {
        LoadedCapture capture = Waves.load(folder, Waves.withNoise(Waves.of(4_800, 40, Math::sin), 1e-3, 17));
        Plot plot = source(capture, Reference.FUNDAMENTAL).plot(Optional.empty(), WIDTH);
        assertTrue(plot.marks().stream().noneMatch(Mark.HorizontalLine.class::isInstance));
        assertTrue(plot.y().lower().orElseThrow() >= -150);
    }

    @Test
    void fallsBackToVoltsWhereThereIsNoTone() {
        SpectrumPlotSource source =
                source(Waves.bare(new Random(5).doubles(4_096, -1, 1).toArray()), Reference.FUNDAMENTAL);
        assertEquals(Reference.VOLT, source.reference());
        assertTrue(harmonics(source.plot(Optional.empty(), WIDTH)).isEmpty());
    }

    @Test
    void drawsASilentChannelWithoutFault() {
        Plot plot = source(Waves.bare(new double[1_000]), Reference.FUNDAMENTAL).plot(Optional.empty(), WIDTH);
        assertTrue(plot.series().get(0).points().stream().allMatch(point -> point.y() == SpectrumTrace.LEAST_DBV));
    }

    @Test
    void namesTheHarmonicNearTheCursor(@TempDir Path folder) {
        SpectrumPlotSource source = source(Waves.load(folder, known(9_600)), Reference.FUNDAMENTAL);
        assertTrue(source.readOut(2_000).contains("(H2 -40.00 dB)"), source.readOut(2_000));
        assertTrue(source.difference(1_000, 2_000).startsWith("\u0394f 1.0000 kHz   \u0394A -40.0"));
    }
}
