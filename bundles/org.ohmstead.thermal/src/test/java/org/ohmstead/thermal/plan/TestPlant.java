// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.ohmstead.thermal.HeatModel;
import org.ohmstead.thermal.HeatPoint;

/**
 * Bodies that get warm, with their own equations and their own integration, which know nothing of the model under test.
 */
final class TestPlant {
    final int sources;
    final List<Double> tau = new ArrayList<>();
    /** Kelvins per watt of each source, by mode. */
    final List<double[]> gain = new ArrayList<>();
    /** Weight of each mode, by point; modes added later have none. */
    final List<double[]> weight = new ArrayList<>();

    final List<double[]> atOnce = new ArrayList<>();
    final List<Double> limitCelsius = new ArrayList<>();

    TestPlant(int sources) {
        this.sources = sources;
    }

    int mode(double tauSeconds, double... kelvinPerWatt) {
        tau.add(tauSeconds);
        gain.add(kelvinPerWatt.clone());
        return tau.size() - 1;
    }

    /** Adds a point of modes with weights, given in pairs, and of what each source adds at once. */
    void point(double limit, double[] kelvinPerWattAtOnce, double... modesAndWeights) {
        double[] weights = new double[tau.size()];
        for (int i = 0; i < modesAndWeights.length; i += 2) {
            weights[(int) modesAndWeights[i]] += modesAndWeights[i + 1];
        }
        weight.add(weights);
        atOnce.add(kelvinPerWattAtOnce.clone());
        limitCelsius.add(limit);
    }

    HeatModel model() {
        HeatModel.Builder builder = new HeatModel.Builder();
        int[] from = IntStream.range(0, sources)
                .map(i -> builder.source("source" + i))
                .toArray();
        for (int mode = 0; mode < tau.size(); mode++) {
            builder.mode(tau.get(mode), from, gain.get(mode));
        }
        for (int point = 0; point < weight.size(); point++) {
            double limit = limitCelsius.get(point);
            HeatPoint which = new HeatPoint(
                    "p" + point,
                    "body " + point,
                    Double.isInfinite(limit) ? OptionalDouble.empty() : OptionalDouble.of(limit));
            builder.point(
                    which,
                    IntStream.range(0, weight.get(point).length).toArray(),
                    weight.get(point),
                    from,
                    atOnce.get(point));
        }
        return builder.build();
    }

    /**
     * Returns by how much the warmest point exceeds its limit less the margin at the worst moment of a schedule, in
     * kelvins, by the classic fourth-order Runge-Kutta method with steps of at most a twentieth of the shortest time
     * constant.
     */
    double worstExcess(ScheduleTask task, Schedule schedule) {
        double[] state =
                task.startState().stream().mapToDouble(Double::doubleValue).toArray();
        double worst = Double.NEGATIVE_INFINITY;
        double now = 0;
        boolean begun = false;
        for (ScheduledJob placed : schedule.jobs()) {
            HeatJob job = task.jobs().get(placed.job());
            double idle = integrate(task, state, task.idleWatts(), null, placed.startSeconds() - now);
            // Before the first job a warm start may be above a limit; that is what the rest is for.
            worst = begun ? Math.max(worst, idle) : worst;
            worst = Math.max(
                    worst, integrate(task, state, job.watts(), job, placed.endSeconds() - placed.startSeconds()));
            now = placed.endSeconds();
            begun = true;
        }
        double longest = Collections.max(tau);
        return Math.max(worst, integrate(task, state, task.idleWatts(), null, 2 * longest));
    }

    private double integrate(ScheduleTask task, double[] state, List<Double> watts, HeatJob job, double seconds) {
        double worst = excess(task, state, watts, job);
        int steps = (int) Math.ceil(seconds / (Collections.min(tau) / 20));
        double step = steps == 0 ? 0 : seconds / steps;
        for (int i = 0; i < steps; i++) {
            for (int mode = 0; mode < state.length; mode++) {
                double target = 0;
                for (int source = 0; source < sources; source++) {
                    target += gain.get(mode)[source] * watts.get(source);
                }
                double t = tau.get(mode);
                double k1 = (target - state[mode]) / t;
                double k2 = (target - state[mode] - step / 2 * k1) / t;
                double k3 = (target - state[mode] - step / 2 * k2) / t;
                double k4 = (target - state[mode] - step * k3) / t;
                state[mode] += step / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
            }
            worst = Math.max(worst, excess(task, state, watts, job));
        }
        return worst;
    }

    private double excess(ScheduleTask task, double[] state, List<Double> watts, HeatJob job) {
        double worst = Double.NEGATIVE_INFINITY;
        for (int point = 0; point < weight.size(); point++) {
            double celsius = task.ambientCelsius();
            for (int mode = 0; mode < weight.get(point).length; mode++) {
                celsius += weight.get(point)[mode] * state[mode];
            }
            for (int source = 0; source < sources; source++) {
                celsius += atOnce.get(point)[source] * watts.get(source);
            }
            if (job != null) {
                celsius += job.rippleKelvin().getOrDefault("p" + point, 0.0);
            }
            worst = Math.max(worst, celsius - (limitCelsius.get(point) - task.marginKelvin()));
        }
        return worst;
    }

    /** Makes an amplifier whose case and devices stand in two corners of what is known of them, and some load parts. */
    static TestPlant bench(SplittableRandom random, boolean lagging) {
        int parts = 1 + random.nextInt(3);
        TestPlant plant = new TestPlant(1 + parts);
        for (int corner = 0; corner < 2; corner++) {
            int body = plant.mode(300 + 900 * random.nextDouble(), only(plant, 0, 0.4 + 0.6 * random.nextDouble()));
            plant.point(60 + 15 * random.nextDouble(), new double[plant.sources], body, 1);
            int device = plant.mode(15 + 20 * random.nextDouble(), only(plant, 0, 0.2 + 0.2 * random.nextDouble()));
            plant.point(95 + 15 * random.nextDouble(), only(plant, 0, 0.05), body, 1, device, 1);
        }
        for (int part = 1; part <= parts; part++) {
            int body = plant.mode(100 + 200 * random.nextDouble(), only(plant, part, 0.5 + 0.5 * random.nextDouble()));
            plant.point(120 + 60 * random.nextDouble(), only(plant, part, 0.1), body, 1);
        }
        if (lagging) {
            // The step response of two bodies in a row: R (1 - (t1 e^(-t/t1) - t2 e^(-t/t2)) / (t1 - t2)).
            double slow = 400 + 200 * random.nextDouble();
            double fast = 60 + 60 * random.nextDouble();
            int one = plant.mode(slow, only(plant, 0, 0.6));
            int other = plant.mode(fast, only(plant, 0, 0.6));
            plant.point(
                    55 + 10 * random.nextDouble(),
                    new double[plant.sources],
                    one,
                    slow / (slow - fast),
                    other,
                    -fast / (slow - fast));
        }
        return plant;
    }

    static double[] only(TestPlant plant, int source, double kelvinPerWatt) {
        double[] gains = new double[plant.sources];
        gains[source] = kelvinPerWatt;
        return gains;
    }
}
