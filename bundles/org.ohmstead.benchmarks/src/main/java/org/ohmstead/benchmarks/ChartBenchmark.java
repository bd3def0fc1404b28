// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.util.Optional;
import java.util.Set;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.chart.ChartLook;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.SampledSource;
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
    private static final double PIXELS_OF_POINT = 96.0 / 72.0;

    /** How many points. */
    @Param("2000000")
    public int points;

    private final PictureMaker maker = new PictureMaker();
    private Request whole;
    private Request thinned;

    /** Makes the record and the plot that is left of it when it is thinned to the width. */
    @Setup(Level.Trial)
    public void fill() {
        PlotSource source = source(points);
        whole = request(source);
        thinned = request(PlotSource.of(source.plot(Optional.empty(), WIDTH)));
    }

    /** Returns a record of a tone whose level swells, with a spike. */
    static PlotSource source(int points) {
        double[] samples = new double[points];
        for (int i = 0; i < points; i++) {
            double share = (double) i / points;
            samples[i] = Math.sin(2 * Math.PI * 5000 * share) * (1 + Math.sin(2 * Math.PI * 3 * share));
        }
        samples[points / 3] = SPIKE;
        Plot frame = Plot.of("Capture", Axis.linear("time", "s"), Axis.linear("output", "V"));
        return SampledSource.of(frame).with("channel A", 0, 10.0 / points, samples, 0);
    }

    private static Request request(PlotSource source) {
        return new Request(
                source, Optional.empty(), WIDTH, HEIGHT, UNSCALED, PIXELS_OF_POINT, ChartLook.LIGHT, Set.of());
    }

    /** Draws what thinning left. */
    @Benchmark
    public Object redraw() {
        return maker.make(thinned);
    }

    /** Thins and draws. */
    @Benchmark
    public Object whole() {
        return maker.make(whole);
    }
}
