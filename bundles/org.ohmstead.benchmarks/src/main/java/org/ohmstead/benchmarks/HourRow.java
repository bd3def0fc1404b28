// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** An hour of two channels in a small heap, by the product's own word. */
final class HourRow implements Row {
    private static final int SAMPLE_RATE_HZ = 48_000;
    private static final int SECONDS = 3600;
    private static final int HEAP_MEGABYTES = 256;
    private static final double FREQUENCY_HZ = 997;
    private static final double VOLTS_PEAK = 28;
    private static final Pattern FREQUENCY = Pattern.compile("\"frequencyHz\"\\s*:\\s*([0-9.eE+-]+)");
    private static final Pattern DIRECT = Pattern.compile("\"dcVolts\"\\s*:\\s*([0-9.eE+-]+)");
    private static final Pattern DISTORTION = Pattern.compile("\"thdFRatio\"\\s*:\\s*([0-9.eE+-]+)");
    private static final Pattern VOLTS = Pattern.compile("\"outputVoltsRms\"\\s*:\\s*([0-9.eE+-]+)");

    @Override
    public String name() {
        return "hour";
    }

    @Override
    public String about() {
        return "analyse an hour of 2 channels at 48 kHz, 24 bits, in a heap of " + HEAP_MEGABYTES + " MB";
    }

    @Override
    public List<Outcome> measure(Room room) throws IOException, InterruptedException {
        Path file = room.folder().resolve("hour.wav");
        CaptureMaker.Tone tone = new CaptureMaker.Tone(FREQUENCY_HZ, VOLTS_PEAK, Double.POSITIVE_INFINITY);
        CaptureMaker.writeSeconds(file, SAMPLE_RATE_HZ, SECONDS, tone, tone);
        HeapRun run = new HeapRun(room, HEAP_MEGABYTES);
        long start = System.nanoTime();
        int code = run.run(
                List.of(),
                "",
                Map.of(),
                "analyze",
                file.toString(),
                "--volts-per-full-scale",
                Double.toString(CaptureMaker.VOLTS_PER_FULL_SCALE),
                "--load-ohms",
                "4",
                "--json");
        double seconds = (System.nanoTime() - start) / 1e9;
        Goal goal = new Goal.AtMost(HEAP_MEGABYTES);
        if (code != 0) {
            // Not being able to is what this row is there to show.
            String said = run.said().strip();
            return List.of(new Outcome(
                    name(),
                    about(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    "MB",
                    goal,
                    "ended with exit code " + code + ": " + said.substring(0, Math.min(300, said.length()))));
        }
        check(run.said());
        return List.of(new Outcome(
                name(),
                about(),
                run.mostMegabytes(),
                OptionalDouble.empty(),
                "MB",
                goal,
                String.format("%.1f s", seconds)));
    }

    private static void check(String said) throws IOException {
        near("frequency", FREQUENCY, said, FREQUENCY_HZ, 1e-9);
        near("voltage", VOLTS, said, VOLTS_PEAK / Math.sqrt(2), 1e-5);
        near("direct voltage", DIRECT, said, CaptureMaker.DIRECT_VOLTS, 5e-3);
        near("distortion", DISTORTION, said, Math.hypot(CaptureMaker.SECOND_RATIO, CaptureMaker.THIRD_RATIO), 5e-3);
    }

    private static void near(String what, Pattern pattern, String said, double expected, double share)
            throws IOException {
        Matcher matcher = pattern.matcher(said);
        int found = 0;
        while (matcher.find()) {
            found++;
            double value = Double.parseDouble(matcher.group(1));
            if (Math.abs(value / expected - 1) > share) {
                throw new IOException("The " + what + " came out as " + value + " instead of " + expected + ".");
            }
        }
        if (found != 2) {
            throw new IOException("There were " + found + " channels with a " + what + " instead of 2.");
        }
    }
}
