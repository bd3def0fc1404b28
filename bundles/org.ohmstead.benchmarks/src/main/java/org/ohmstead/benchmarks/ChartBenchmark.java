// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.LongRecord;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.chart.ChartLook;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.SampledSource;
import org.ohmstead.plot.ui.ViewWindow;
import org.ohmstead.plot.ui.internal.PictureMaker;
import org.ohmstead.plot.ui.internal.Request;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** The picture of a record of many points, as the chart in the workbench makes it away from the window. */
@State(Scope.Benchmark)
public class ChartBenchmark {
    static final int WIDTH = 1920;
    static final int HEIGHT = 1080;
    /** The highest sample, the only one that reaches there. */
    static final double SPIKE = 3;

    private static final int UNSCALED = 100;
    private static final double SECONDS = 10;
    private static final double PIXELS_OF_POINT = 96.0 / 72.0;

    /** Shares of the record that are in view, one after the other: from nearly all of it to a few cycles. */
    private static final double[] SHARES = {0.9, 0.3, 0.1, 0.03, 0.01, 0.003, 0.001};

    /** How many points. */
    @Param("2000000")
    public int points;

    private final PictureMaker maker = new PictureMaker();
    private final List<Request> windows = new ArrayList<>();
    private double[] samples;
    private Request whole;
    private int turn;

    /** Makes the record, and has it drawn once: what is done once for a record is no part of drawing it again. */
    @Setup(Level.Trial)
    public void fill() {
        samples = samples(points);
        PlotSource source = source(samples);
        whole = request(source, Optional.empty());
        for (double place = 0; place < 1; place += 0.19) {
            for (double share : SHARES) {
                double from = SECONDS * (1 - share) * place;
                windows.add(request(source, Optional.of(ViewWindow.ofX(from, from + SECONDS * share))));
            }
        }
        maker.make(whole);
    }

    /** Returns a tone whose level swells, with a spike. */
    private static double[] samples(int points) {
        double[] samples = new double[points];
        for (int i = 0; i < points; i++) {
            double share = (double) i / points;
            samples[i] = Math.sin(2 * Math.PI * 5000 * share) * (1 + Math.sin(2 * Math.PI * 3 * share));
        }
        samples[points / 3] = SPIKE;
        return samples;
    }

    /** Returns a record of a tone whose level swells, with a spike. */
    static PlotSource source(int points) {
        return source(samples(points));
    }

    private static PlotSource source(double[] samples) {
        Plot frame = Plot.of("Capture", Axis.linear("time", "s"), Axis.linear("output", "V"));
        return SampledSource.of(frame).with("channel A", 0, SECONDS / samples.length, samples, 0);
    }

    private static Request request(PlotSource source, Optional<ViewWindow> window) {
        return new Request(source, window, WIDTH, HEIGHT, UNSCALED, PIXELS_OF_POINT, ChartLook.LIGHT, Set.of());
    }

    /** Draws the whole record again, from what was found when it was gone through once. */
    @Benchmark
    public Object redraw() {
        return maker.make(whole);
    }

    /** Draws another window of it, as zooming and panning do. */
    @Benchmark
    public Object window() {
        turn = (turn + 1) % windows.size();
        return maker.make(windows.get(turn));
    }

    /** Goes through all samples, as is done once for a record. */
    @Benchmark
    public Object decimate() {
        return LongRecord.of(samples);
    }
}
