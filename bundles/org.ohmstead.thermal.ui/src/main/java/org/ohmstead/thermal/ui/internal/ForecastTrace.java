// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.ohmstead.thermal.HeatModel;
import org.ohmstead.thermal.plan.HeatJob;
import org.ohmstead.thermal.plan.Schedule;
import org.ohmstead.thermal.plan.ScheduleTask;
import org.ohmstead.thermal.plan.ScheduledJob;

/**
 * The temperature of a place over a schedule.
 *
 * @param place which
 * @param samples over time, not falling; two at once where the power changes
 */
record ForecastTrace(ForecastPlace place, List<Sample> samples) {
    private static final double USUAL_STEP_SECONDS = 5;
    private static final int LEAST_STEPS = 6;
    private static final int MOST_STEPS = 40;

    ForecastTrace {
        samples = List.copyOf(samples);
    }

    /**
     * A moment.
     *
     * @param seconds from the beginning
     * @param likelyCelsius with the middle of everything; the highest where there is no such
     * @param lowCelsius the lowest that the ranges allow
     * @param highCelsius the highest that they allow, bursts included
     */
    record Sample(double seconds, double likelyCelsius, double lowCelsius, double highCelsius) {}

    /** Returns the traces of all places. */
    static List<ForecastTrace> of(ScheduleTask task, Schedule schedule) {
        List<ForecastPlace> places = ForecastPlace.of(task.model());
        Sampler sampler = new Sampler(task, places);
        for (ScheduledJob placed : schedule.jobs()) {
            HeatJob job = task.jobs().get(placed.job());
            sampler.stretch(task.idleWatts(), Map.of(), placed.changeSeconds() + placed.restSeconds());
            sampler.stretch(job.watts(), job.rippleKelvin(), placed.endSeconds() - placed.startSeconds());
        }
        List<ForecastTrace> traces = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            traces.add(new ForecastTrace(places.get(i), sampler.samples.get(i)));
        }
        return List.copyOf(traces);
    }

    /** Goes through the schedule and keeps what the places' temperatures are. */
    private static final class Sampler {
        private final ScheduleTask task;
        private final HeatModel model;
        private final List<ForecastPlace> places;
        private final List<List<Sample>> samples = new ArrayList<>();
        private final double[] state;
        private double seconds;

        Sampler(ScheduleTask task, List<ForecastPlace> places) {
            this.task = task;
            this.model = task.model();
            this.places = places;
            places.forEach(place -> samples.add(new ArrayList<>()));
            state = plain(task.startState());
        }

        /** Goes on with constant powers; samples lie denser at the beginning, where temperatures change fastest. */
        void stretch(List<Double> powers, Map<String, Double> rippleKelvin, double length) {
            if (length <= 0) {
                return;
            }
            double[] watts = plain(powers);
            int steps = (int) Math.max(LEAST_STEPS, Math.min(MOST_STEPS, Math.ceil(length / USUAL_STEP_SECONDS)));
            double start = seconds;
            take(watts, rippleKelvin);
            for (int step = 1; step <= steps; step++) {
                double share = (double) step / steps;
                double next = start + length * share * share;
                model.advance(state, watts, next - seconds);
                seconds = next;
                take(watts, rippleKelvin);
            }
        }

        private void take(double[] watts, Map<String, Double> rippleKelvin) {
            for (int i = 0; i < places.size(); i++) {
                ForecastPlace place = places.get(i);
                double low = Double.POSITIVE_INFINITY;
                double high = Double.NEGATIVE_INFINITY;
                for (int point : place.points()) {
                    double celsius = celsius(point, watts);
                    low = Math.min(low, celsius);
                    String id = model.points().get(point).id();
                    high = Math.max(high, celsius + rippleKelvin.getOrDefault(id, 0.0));
                }
                double likely =
                        place.likely().isPresent() ? celsius(place.likely().getAsInt(), watts) : high;
                samples.get(i).add(new Sample(seconds, likely, low, high));
            }
        }

        private double celsius(int point, double[] watts) {
            return task.ambientCelsius() + model.riseKelvin(point, state, watts);
        }

        private static double[] plain(List<Double> values) {
            return values.stream().mapToDouble(Double::doubleValue).toArray();
        }
    }
}
