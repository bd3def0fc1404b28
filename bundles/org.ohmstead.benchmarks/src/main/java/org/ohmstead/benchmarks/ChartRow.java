// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.chart.ChartFonts;
import org.ohmstead.plot.chart.ChartLook;
import org.ohmstead.plot.chart.ChartOptions;
import org.ohmstead.plot.chart.ChartRenderer;

/** The picture of a record of two million points. */
final class ChartRow implements Row {
    private static final int POINTS = 2_000_000;
    private static final double MILLIS = 1e3;
    /** On one core the compiler takes turns with what it compiles: shorter stretches would measure code that is not compiled yet. */
    private static final long STRETCH_MILLIS = 2000;

    private static final Goal GOAL = new Goal.AtMost(16);
    /** A line across the picture has at least so many pixels. */
    private static final int LEAST_PIXELS = 2 * ChartBenchmark.WIDTH;

    @Override
    public String name() {
        return "chart";
    }

    @Override
    public String about() {
        return "a chart with " + POINTS
                + " points at 1920 x 1080, one core; against the time between two pictures of a screen";
    }

    @Override
    public List<Outcome> measure(Room room) throws IOException {
        check();
        List<Outcome> outcomes = new ArrayList<>();
        outcomes.add(outcome(room, "redraw", "chart", "redraw of the whole once decimated, one core", GOAL));
        outcomes.add(outcome(room, "window", "chart-window", "draw other windows: zoom and pan, one core", GOAL));
        outcomes.add(
                outcome(room, "decimate", "chart-decimate", "decimate, once for a record, one core", new Goal.Shown()));
        return outcomes;
    }

    private static Outcome outcome(Room room, String method, String name, String about, Goal goal) throws IOException {
        Times times = new Times();
        Jmh jmh = new Jmh(ChartBenchmark.class, method, room)
                .with("points", POINTS)
                .onOneCore()
                .stretch(STRETCH_MILLIS);
        for (int round = 0; round < room.rounds(); round++) {
            times.add(jmh.run());
        }
        return new Outcome(
                name,
                about,
                OptionalDouble.of(MILLIS * times.median()),
                OptionalDouble.empty(),
                "ms",
                goal,
                String.format("best %.4g ms; median of %d", MILLIS * times.best(), times.count()));
    }

    /** The spike must have come through, and a line be in the picture. */
    private static void check() throws IOException {
        Plot plot = ChartBenchmark.source(POINTS).plot(Optional.empty(), ChartBenchmark.WIDTH);
        double highest = plot.series().get(0).points().stream()
                .mapToDouble(PlotPoint::y)
                .max()
                .orElse(0);
        if (highest < ChartBenchmark.SPIKE) {
            throw new IOException("The thinned record has lost its peak: it reaches " + highest + " instead of "
                    + ChartBenchmark.SPIKE + ".");
        }
        BufferedImage image =
                new BufferedImage(ChartBenchmark.WIDTH, ChartBenchmark.HEIGHT, BufferedImage.TYPE_INT_RGB);
        new ChartRenderer(ChartFonts.bundled())
                .draw(
                        plot,
                        image,
                        1,
                        ChartBenchmark.WIDTH,
                        ChartBenchmark.HEIGHT,
                        new ChartOptions(ChartLook.LIGHT, false));
        int colour = ChartLook.LIGHT.tone(0) & 0xFFFFFF;
        int[] pixels = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
        long drawn = IntStream.of(pixels)
                .filter(pixel -> (pixel & 0xFFFFFF) == colour)
                .count();
        if (drawn < LEAST_PIXELS) {
            throw new IOException("The picture has only " + drawn + " pixels in the colour of the line.");
        }
    }
}
