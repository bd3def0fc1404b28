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
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.plot.ui.ViewWindow;

class WavePlotSourceTest {
    private static final int LONG_RECORD = 2_000_000;
    private static final int WIDTH = 640;
    /** Harmonics above half the sample rate fold back; at this tone they do not fall on others. */
    private static final double FOLDED_APART_HZ = 997;

    private static WavePlotSource source(LoadedCapture capture, boolean fundamental) {
        return new WavePlotSource(capture, capture.channels(), fundamental, OptionalDouble.empty());
    }

    private static Series series(Plot plot, String name) {
        return plot.series().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** Truth: going through all samples of the window one by one. */
    @Test
    void drawsTheExactExtremesOfAnyWindowOfALongRecordWithFewPoints() {
        Random random = new Random(20260302);
        double[] samples = random.doubles(LONG_RECORD, -40, 40).toArray();
        samples[1_777_777] = 55;
        LoadedCapture capture = Waves.bare(samples);
        WavePlotSource source = source(capture, false);
        assertEquals("s", capture.timeUnit());
        for (int trial = 0; trial < 60; trial++) {
            int from = random.nextInt(LONG_RECORD - 10);
            int to = from + 2 + random.nextInt(trial % 2 == 0 ? LONG_RECORD - from - 2 : 5_000) % (LONG_RECORD - from);
            to = Math.min(to, LONG_RECORD - 1);
            Plot plot = source.plot(
                    Optional.of(ViewWindow.ofX((from - 0.25) / Waves.RATE_HZ, (to + 0.25) / Waves.RATE_HZ)), WIDTH);
            List<PlotPoint> points = series(plot, "A").points();
            assertTrue(points.size() <= 2 * WIDTH + 4, points.size() + " points");
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            // The line runs on to one sample beyond each edge.
            for (int i = Math.max(0, from - 1); i <= Math.min(LONG_RECORD - 1, to + 1); i++) {
                low = Math.min(low, samples[i]);
                high = Math.max(high, samples[i]);
            }
            assertEquals(low, points.stream().mapToDouble(PlotPoint::y).min().orElseThrow(), 0);
            assertEquals(high, points.stream().mapToDouble(PlotPoint::y).max().orElseThrow(), 0);
        }
        List<PlotPoint> whole =
                series(source.plot(Optional.empty(), WIDTH), "A").points();
        assertTrue(whole.size() <= 2 * WIDTH);
        assertTrue(whole.contains(new PlotPoint(1_777_777 / Waves.RATE_HZ, 55)));
    }

    @Test
    void givesEverySampleForExport() {
        LoadedCapture capture = Waves.bare(new Random(1).doubles(20_000, -1, 1).toArray());
        assertEquals(
                20_000,
                series(source(capture, false).plot(Optional.empty(), Integer.MAX_VALUE), "A")
                        .points()
                        .size());
    }

    @Test
    void marksTheSamplesWhereTheyLieFarApart() {
        LoadedCapture capture = Waves.bare(new Random(1).doubles(4_800, -1, 1).toArray());
        WavePlotSource source = source(capture, false);
        assertEquals(
                Style.LINE, series(source.plot(Optional.empty(), WIDTH), "A").style());
        Plot near = source.plot(Optional.of(ViewWindow.ofX(10, 11)), WIDTH);
        assertEquals(Style.LINE_AND_MARKERS, series(near, "A").style());
    }

    /** The limits and the clipped share are those at which the sine was cut: 30 V at half its peak on each side. */
    @Test
    void marksWhereASineIsCutOff(@TempDir Path folder) {
        LoadedCapture capture =
                Waves.load(folder, Waves.of(9_600, 1_000, phase -> Math.max(-15, Math.min(15, 30 * Math.sin(phase)))));
        WavePlotSource source = source(capture, true);
        Plot plot = source.plot(source.fewCycles(), WIDTH);
        List<Double> limits = plot.marks().stream()
                .filter(Mark.HorizontalLine.class::isInstance)
                .map(mark -> ((Mark.HorizontalLine) mark).y())
                .sorted()
                .toList();
        assertEquals(-15, limits.get(0), 0.05);
        assertEquals(15, limits.get(1), 0.05);
        List<PlotPoint> clipped = series(plot, "A clipped").points();
        // A sine is beyond half its peak for 2/3 of the time: 1 - 2 asin(1/2) / pi.
        assertEquals(5 * 48 * 2 / 3.0, clipped.size(), 10);
        assertTrue(clipped.stream().allMatch(point -> Math.abs(Math.abs(point.y()) - 15) < 0.01));
    }

    @Test
    void drawsTheFundamentalOfACutSine(@TempDir Path folder) {
        double[] samples = Waves.of(9_600, FOLDED_APART_HZ, phase -> Math.max(-15, Math.min(15, 30 * Math.sin(phase))));
        WavePlotSource source = source(Waves.load(folder, samples), true);
        List<PlotPoint> fit =
                series(source.plot(source.fewCycles(), WIDTH), "A fundamental").points();
        // Closed form of the hard limit k = 1/2: 2/pi (asin k + k sqrt(1 - k^2)) of the uncut peak.
        double peak = 30 * 2 / Math.PI * (Math.asin(0.5) + 0.5 * Math.sqrt(0.75));
        for (PlotPoint point : fit) {
            assertEquals(peak * Math.sin(2 * Math.PI * FOLDED_APART_HZ / 1_000 * point.x()), point.y(), 0.02);
        }
        assertTrue(fit.size() > 100);
    }

    @Test
    void keepsTheSameSeriesInEveryWindow(@TempDir Path folder) {
        WavePlotSource source = source(
                Waves.load(folder, Waves.of(24_000, 1_000, phase -> Math.max(-9, Math.min(9, 10 * Math.sin(phase))))),
                true);
        List<String> whole = source.plot(Optional.empty(), WIDTH).series().stream()
                .map(Series::name)
                .toList();
        List<String> near = source.plot(source.fewCycles(), WIDTH).series().stream()
                .map(Series::name)
                .toList();
        assertEquals(whole, near);
    }

    @Test
    void showsFiveCyclesFromAnUpwardCrossing(@TempDir Path folder) {
        WavePlotSource source =
                source(Waves.load(folder, Waves.of(4_800, 1_000, phase -> 10 * Math.sin(phase + 1))), false);
        ViewWindow window = source.fewCycles().orElseThrow();
        assertEquals(5, window.upperX() - window.lowerX(), 1e-3);
        // sin(2 pi f t + 1) first crosses zero upwards at t = (2 pi - 1) / (2 pi f).
        assertEquals((2 * Math.PI - 1) / (2 * Math.PI), window.lowerX(), 1e-3);
    }

    @Test
    void readsTimeAndVoltsAndTheirDifferences() {
        double[] samples = new double[4_800];
        samples[48] = 12.5;
        samples[96] = -2.5;
        WavePlotSource source = source(Waves.bare(samples), false);
        assertEquals("1.0000 ms   A 12.50 V", source.readOut(1.0));
        assertEquals("\u0394t 1.0000 ms   1/\u0394t 1.0000 kHz   \u0394A -15.00 V", source.difference(1.0, 2.0));
        assertEquals(12.5, source.valueAt("A", 1.0).orElseThrow(), 0);
    }
}
