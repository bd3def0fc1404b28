// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/**
 * A day in 10,000 power steps: an amplifier with six time constants and 20 load parts, here and in ngspice, one after the other. Not a test;
 * product/measure-heat runs it.
 */
public final class HeatBenchmark {
    private static final int STEPS = 10_000;
    private static final double DAY_SECONDS = 86_400;
    private static final int PARTS = 20;
    private static final double AMPLIFIER_WATTS = 60;
    private static final double PART_WATTS = 90;
    /** Capacity in joules per kelvin and resistance to the next, the last to the air, in kelvins per watt: die to heat sink. */
    private static final double[][] LADDER = {{0.02, 0.05}, {0.4, 0.08}, {4, 0.1}, {40, 0.12}, {400, 0.15}, {2400, 0.45}
    };

    private static final double EDGE_SECONDS = 0.001;
    private static final double EVERY_SECONDS = 86.4;
    private static final int REPEATS = 31;
    /** At its usual tolerance ngspice leaves a tenth of a kelvin of 60. */
    private static final double SAME_KELVIN = 0.5;

    private static final double NANOS = 1e9;

    private final double[] seconds = new double[STEPS];
    private final double[] levels = new double[STEPS];

    private HeatBenchmark() {
        SplittableRandom random = new SplittableRandom(20261126);
        for (int i = 0; i < STEPS; i++) {
            seconds[i] = random.nextDouble(2, 15);
            levels[i] = random.nextInt(3) == 0 ? 0 : random.nextDouble(0.1, 1);
        }
        double scale = DAY_SECONDS / Arrays.stream(seconds).sum();
        for (int i = 0; i < STEPS; i++) {
            seconds[i] *= scale;
        }
    }

    /**
     * Runs both.
     *
     * @param arguments the ngspice program, a folder to work in, and words for ngspice's options
     */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        HeatBenchmark bench = new HeatBenchmark();
        Path folder = Path.of(arguments[1]);
        Path deck = folder.resolve("day.cir");
        Path output = folder.resolve("day.txt");
        Files.writeString(deck, bench.deck(output, arguments.length > 2 ? arguments[2] : "reltol=1e-3"));
        long before = System.nanoTime();
        Process ngspice = new ProcessBuilder(arguments[0], "-b", deck.toString())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("ngspice.log").toFile())
                .start();
        int code = ngspice.waitFor();
        double theirSeconds = (System.nanoTime() - before) / NANOS;
        if (code != 0 || !Files.exists(output)) {
            throw new IOException(
                    "ngspice ended with " + code + ": " + Files.readString(folder.resolve("ngspice.log")));
        }

        HeatModel model = bench.model();
        double[] times = new double[REPEATS];
        double hottest = 0;
        for (int i = 0; i < REPEATS; i++) {
            long start = System.nanoTime();
            hottest = bench.hottestRiseKelvin(model);
            times[i] = (System.nanoTime() - start) / NANOS;
        }
        double first = times[0];
        Arrays.sort(times);
        double median = times[REPEATS / 2];
        System.out.printf(
                Locale.ROOT,
                "24 hours, %d power steps, %d time constants, %d parts; hottest rise %.2f K%n",
                STEPS,
                LADDER.length,
                PARTS,
                hottest);
        System.out.printf(Locale.ROOT, "ngspice, the whole run:     %9.1f ms%n", 1000 * theirSeconds);
        System.out.printf(
                Locale.ROOT, "Ohmstead, the first time:   %9.1f ms, ratio %.0f%n", 1000 * first, theirSeconds / first);
        System.out.printf(
                Locale.ROOT,
                "Ohmstead, median of %d:     %9.1f ms, ratio %.0f%n",
                REPEATS,
                1000 * median,
                theirSeconds / median);
        double[] differences = new double[3];
        for (int column = 0; column < differences.length; column++) {
            differences[column] = bench.difference(model, output, column);
        }
        System.out.printf(
                Locale.ROOT,
                "greatest difference over the day: %.4f K at the first body, %.4f K at the heat sink, %.4f K at a part%n",
                differences[0],
                differences[1],
                differences[2]);
        if (!(Arrays.stream(differences).max().orElseThrow() <= SAME_KELVIN)) {
            throw new IOException("The two do not agree within " + SAME_KELVIN + " K.");
        }
        System.out.printf(Locale.ROOT, "measured heat ours=%.6g reference=%.6g unit=s%n", median, theirSeconds);
    }

    private static double partOhms(int part) {
        return 0.5 + 0.05 * part;
    }

    private static double partJoulesPerKelvin(int part) {
        return 60 + 15 * part;
    }

    private HeatModel model() {
        HeatNetwork.Builder builder = new HeatNetwork.Builder();
        for (int i = 0; i < LADDER.length; i++) {
            builder.body("b" + i, LADDER[i][0]);
        }
        for (int i = 0; i < LADDER.length - 1; i++) {
            builder.link("b" + i, "b" + (i + 1), LADDER[i][1]);
        }
        builder.toAir("b" + (LADDER.length - 1), LADDER[LADDER.length - 1][1]);
        builder.source("amplifier", "b0");
        builder.point(new HeatPoint("die", "die", OptionalDouble.empty()), "b0");
        builder.point(new HeatPoint("sink", "sink", OptionalDouble.empty()), "b" + (LADDER.length - 1));
        for (int part = 0; part < PARTS; part++) {
            String id = "part" + part;
            builder.body(id, partJoulesPerKelvin(part))
                    .toAir(id, partOhms(part))
                    .source(id, id);
            builder.point(new HeatPoint(id, id, OptionalDouble.empty()), id);
        }
        return builder.build().model();
    }

    private static void powers(HeatModel model, double level, double[] watts) {
        for (int source = 0; source < watts.length; source++) {
            watts[source] = level * (model.sources().get(source).equals("amplifier") ? AMPLIFIER_WATTS : PART_WATTS);
        }
    }

    /** The work that is measured: the whole day, and the hottest that any point is at any step's end. */
    private double hottestRiseKelvin(HeatModel model) {
        double[] state = model.cold();
        double[] watts = new double[model.sources().size()];
        double hottest = 0;
        for (int step = 0; step < STEPS; step++) {
            powers(model, levels[step], watts);
            model.advance(state, watts, seconds[step]);
            for (int point = 0; point < model.points().size(); point++) {
                hottest = Math.max(hottest, model.riseKelvin(point, state, watts));
            }
        }
        return hottest;
    }

    private double difference(HeatModel model, Path output, int column) throws IOException {
        double greatest = 0;
        double[] state = model.cold();
        double[] watts = new double[model.sources().size()];
        double now = 0;
        int step = 0;
        double left = seconds[0];
        int point = column < 2 ? column : 2;
        for (String line : Files.readAllLines(output)) {
            String[] fields = line.strip().split("\\s+");
            double time = Double.parseDouble(fields[0]);
            while (step < STEPS && time - now > left) {
                powers(model, levels[step], watts);
                model.advance(state, watts, left);
                now += left;
                step++;
                left = step < STEPS ? seconds[step] : Double.POSITIVE_INFINITY;
            }
            if (step == STEPS) {
                break;
            }
            powers(model, levels[step], watts);
            model.advance(state, watts, time - now);
            left -= time - now;
            now = time;
            greatest = Math.max(
                    greatest, Math.abs(model.riseKelvin(point, state, watts) - Double.parseDouble(fields[1 + column])));
        }
        return greatest;
    }

    private String deck(Path output, String options) {
        List<String> lines = new ArrayList<>();
        lines.add("a day of heat: watts are amperes, kelvins are volts");
        StringBuilder wave = new StringBuilder("vp p 0 pwl(0 ").append(levels[0]);
        lines.add(wave.toString());
        double time = 0;
        for (int step = 0; step < STEPS; step++) {
            lines.add(String.format(Locale.ROOT, "+ %.6f %.6f", time + EDGE_SECONDS, levels[step]));
            time += seconds[step];
            lines.add(String.format(Locale.ROOT, "+ %.6f %.6f", time, levels[step]));
        }
        lines.add("+ )");
        lines.add("gamp 0 b0 p 0 " + AMPLIFIER_WATTS);
        for (int i = 0; i < LADDER.length; i++) {
            lines.add("c" + i + " b" + i + " 0 " + LADDER[i][0]);
            lines.add("r" + i + " b" + i + " " + (i + 1 < LADDER.length ? "b" + (i + 1) : "0") + " " + LADDER[i][1]);
        }
        for (int part = 0; part < PARTS; part++) {
            String node = "part" + part;
            lines.add("gp" + part + " 0 " + node + " p 0 " + PART_WATTS);
            lines.add("cp" + part + " " + node + " 0 " + partJoulesPerKelvin(part));
            lines.add("rp" + part + " " + node + " 0 " + partOhms(part));
        }
        lines.add(".options " + options + " interp");
        lines.add(".control");
        lines.add("save v(b0) v(b5) v(part0)");
        lines.add("tran " + EVERY_SECONDS + " " + DAY_SECONDS + " uic");
        lines.add("set wr_singlescale");
        lines.add("wrdata " + output + " v(b0) v(b5) v(part0)");
        lines.add("quit");
        lines.add(".endc");
        lines.add(".end");
        return String.join("\n", lines) + "\n";
    }
}
