// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.List;

/**
 * Powers over time, step after step; after the last step the powers are those of the last. Every figure is exact: within a step the modes
 * follow their closed form.
 *
 * @param steps at least one, all with as many powers
 */
public record PowerProfile(List<PowerStep> steps) {
    public PowerProfile {
        steps = List.copyOf(steps);
        if (steps.isEmpty()) {
            throw new IllegalArgumentException("steps is empty; a profile needs at least one");
        }
        int count = steps.get(0).shared().length;
        for (PowerStep step : steps) {
            if (step.shared().length != count) {
                throw new IllegalArgumentException("steps has one with " + step.shared().length
                        + " powers and one with " + count + "; all need one power per source");
            }
        }
    }

    /** Returns the profile of one constant power for ever. */
    public static PowerProfile constant(double... watts) {
        return new PowerProfile(List.of(new PowerStep(0, watts)));
    }

    /** Returns how long the steps last together, in seconds. */
    public double seconds() {
        return steps.stream().mapToDouble(PowerStep::seconds).sum();
    }

    /**
     * Returns the rise of a point above the air, in kelvins, at some times.
     *
     * @param model what gets warm
     * @param point number of the point
     * @param start the modes at time 0; not changed
     * @param times in seconds from 0 on, in rising order
     */
    public double[] risesKelvin(HeatModel model, int point, double[] start, double[] times) {
        double[] rises = new double[times.length];
        double[] state = start.clone();
        double now = 0;
        double stepEnd = steps.get(0).seconds();
        int step = 0;
        for (int i = 0; i < times.length; i++) {
            if (!Double.isFinite(times[i]) || times[i] < now) {
                throw new IllegalArgumentException(
                        "times has " + times[i] + " at " + i + "; times must be finite, from 0 on, and rise");
            }
            while (step < steps.size() - 1 && stepEnd < times[i]) {
                model.advance(state, steps.get(step).shared(), Math.max(0, stepEnd - now));
                now = Math.max(now, stepEnd);
                step++;
                stepEnd += steps.get(step).seconds();
            }
            model.advance(state, steps.get(step).shared(), times[i] - now);
            now = times[i];
            rises[i] = model.riseKelvin(point, state, steps.get(step).shared());
        }
        return rises;
    }

    /** Returns the state at the end of the last step. */
    public double[] after(HeatModel model, double[] start) {
        double[] state = start.clone();
        for (PowerStep step : steps) {
            model.advance(state, step.shared(), step.seconds());
        }
        return state;
    }

    /** Returns the hottest that a point gets from the start to the end of the last step, and when. */
    public HeatPeak peak(HeatModel model, int point, double[] start) {
        double[] state = start.clone();
        double begins = 0;
        HeatPeak hottest =
                new HeatPeak(model.riseKelvin(point, state, steps.get(0).shared()), 0);
        for (PowerStep step : steps) {
            HeatPeak here = model.peak(point, state, step.shared(), step.seconds());
            if (here.riseKelvin() > hottest.riseKelvin()) {
                hottest = new HeatPeak(here.riseKelvin(), begins + here.afterSeconds());
            }
            model.advance(state, step.shared(), step.seconds());
            begins += step.seconds();
        }
        return hottest;
    }
}
