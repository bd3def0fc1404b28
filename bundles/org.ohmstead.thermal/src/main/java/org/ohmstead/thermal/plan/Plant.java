// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.ohmstead.thermal.HeatModel;

/**
 * A task as plain numbers: where each job leads each mode, and how warm the points may get above the air. What {@link
 * HeatModel} keeps to itself is read off its answers to one watt and to one kelvin, which is exact as it is linear.
 */
final class Plant {
    /** Room for the rounding of sums, so that a temperature said to be below its limit is. */
    private static final double ROUNDING_KELVIN = 1e-8;

    final int jobs;
    final double[] onSeconds;
    final double[] tauSeconds;
    /** Where each job leads each mode in the end, in kelvins. */
    final double[][] target;

    final double[] idleTarget;
    /** What is left of a mode's distance from its target after each job. */
    final double[][] onDecay;

    final double[] start;
    /** Number of each point in the model. */
    final int[] pointNumber;

    final int[][] pointModes;
    final double[][] weights;
    /** What each job adds to each point at once and by ripple, in kelvins. */
    final double[][] direct;

    final double[] idleDirect;
    /** How far above the air each point may get, in kelvins; infinite without a limit. */
    final double[] limit;

    Plant(double[] onSeconds, Modes modes, Points points) {
        jobs = onSeconds.length;
        this.onSeconds = onSeconds;
        tauSeconds = modes.tauSeconds;
        target = modes.target;
        idleTarget = modes.idleTarget;
        start = modes.start;
        pointNumber = points.number;
        pointModes = points.modes;
        weights = points.weights;
        direct = points.direct;
        idleDirect = points.idleDirect;
        limit = points.limit;
        onDecay = new double[jobs][tauSeconds.length];
        for (int job = 0; job < jobs; job++) {
            for (int mode = 0; mode < tauSeconds.length; mode++) {
                onDecay[job][mode] = Math.exp(-onSeconds[job] / tauSeconds[mode]);
            }
        }
    }

    /** What the constructor needs to know of the modes. */
    record Modes(double[] tauSeconds, double[][] target, double[] idleTarget, double[] start) {}

    /** What the constructor needs to know of the points. */
    record Points(
            int[] number, int[][] modes, double[][] weights, double[][] direct, double[] idleDirect, double[] limit) {}

    static Plant of(ScheduleTask task) {
        HeatModel model = task.model();
        int modes = model.modeCount();
        int jobs = task.jobs().size();
        double[] tau = IntStream.range(0, modes).mapToDouble(model::tauSeconds).toArray();
        double[][] target = new double[jobs][];
        for (int job = 0; job < jobs; job++) {
            target[job] = model.settled(plain(task.jobs().get(job).watts()));
        }
        double[] idle = model.settled(plain(task.idleWatts()));
        return new Plant(
                task.jobs().stream().mapToDouble(HeatJob::onSeconds).toArray(),
                new Modes(tau, target, idle, plain(task.startState())),
                points(task));
    }

    private static Points points(ScheduleTask task) {
        HeatModel model = task.model();
        int count = model.points().size();
        int jobs = task.jobs().size();
        int[][] pointModes = new int[count][];
        double[][] weights = new double[count][];
        double[][] direct = new double[jobs][count];
        double[] idleDirect = new double[count];
        double[] limit = new double[count];
        double[] cold = model.cold();
        double[] noWatts = new double[model.sources().size()];
        for (int point = 0; point < count; point++) {
            double[] all = new double[cold.length];
            for (int mode = 0; mode < cold.length; mode++) {
                double[] one = model.cold();
                one[mode] = 1;
                all[mode] = model.riseKelvin(point, one, noWatts);
            }
            int[] used = IntStream.range(0, cold.length)
                    .filter(mode -> all[mode] != 0)
                    .toArray();
            pointModes[point] = used;
            weights[point] = Arrays.stream(used).mapToDouble(mode -> all[mode]).toArray();
            String id = model.points().get(point).id();
            for (int job = 0; job < jobs; job++) {
                HeatJob each = task.jobs().get(job);
                Map<String, Double> ripple = each.rippleKelvin();
                direct[job][point] = model.riseKelvin(point, cold, plain(each.watts())) + ripple.getOrDefault(id, 0.0);
            }
            idleDirect[point] = model.riseKelvin(point, cold, plain(task.idleWatts()));
            limit[point] = model.points().get(point).limitCelsius().orElse(Double.POSITIVE_INFINITY)
                    - task.marginKelvin()
                    - task.ambientCelsius()
                    - ROUNDING_KELVIN;
        }
        return new Points(IntStream.range(0, count).toArray(), pointModes, weights, direct, idleDirect, limit);
    }

    static double[] plain(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }

    int modes() {
        return tauSeconds.length;
    }

    int points() {
        return limit.length;
    }

    /**
     * Returns the least that a mode can ever be: all that drives it, and the state that it starts from, is at least
     * that.
     */
    double lowest(int mode) {
        double least = Math.min(start[mode], idleTarget[mode]);
        for (double[] job : target) {
            least = Math.min(least, job[mode]);
        }
        return least;
    }

    /** Returns the most that a mode can ever be. */
    double highest(int mode) {
        double most = Math.max(start[mode], idleTarget[mode]);
        for (double[] job : target) {
            most = Math.max(most, job[mode]);
        }
        return most;
    }

    /**
     * Returns whether the heat of every job, as far as it exceeds that of a rest, warms every point that has a limit,
     * and the less the longer ago it was. Then of two runs of the same order the one that does each job as soon as its
     * limits allow is never warmer at any later moment, so that resting only just before the job that needs it, and as
     * short as possible, takes the least time.
     */
    boolean fallsMonotonically() {
        for (int point = 0; point < points(); point++) {
            if (Double.isInfinite(limit[point])) {
                continue;
            }
            for (int job = 0; job < jobs; job++) {
                if (direct[job][point] < idleDirect[point]) {
                    return false;
                }
                for (int i = 0; i < weights[point].length; i++) {
                    int mode = pointModes[point][i];
                    if (weights[point][i] * (target[job][mode] - idleTarget[mode]) < 0) {
                        return false;
                    }
                }
            }
        }
        return true;
    }
}
