// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.HashMap;
import java.util.Map;

/** Moves a state through jobs and rests, and finds the shortest rest that a job needs. For one thread. */
final class HeatRun {
    private static final int ROUNDS = 8;
    private static final int STEPS = 100;
    private static final double NUDGE_SECONDS = 1e-7;
    private static final double PRECISION_SECONDS = 1e-6;
    private static final double LONGEST_TAUS = 25;
    private static final int MOST_REMEMBERED = 2000;

    private final Plant plant;
    private final ExponentialSum sum = new ExponentialSum();
    private final Map<Double, double[]> decays = new HashMap<>();
    private final double[] trial;
    private final double longestRestSeconds;
    private int forcing = -1;

    HeatRun(Plant plant) {
        this.plant = plant;
        trial = new double[plant.modes()];
        double slowest = 0;
        for (double tau : plant.tauSeconds) {
            slowest = Math.max(slowest, tau);
        }
        longestRestSeconds = LONGEST_TAUS * slowest;
    }

    /** Moves a state through a rest or change-over whose length occurs again and again. */
    void change(double[] state, double seconds) {
        if (seconds == 0) {
            return;
        }
        double[] decay = decays.get(seconds);
        if (decay == null) {
            decay = new double[state.length];
            for (int mode = 0; mode < decay.length; mode++) {
                decay[mode] = Math.exp(-seconds / plant.tauSeconds[mode]);
            }
            if (decays.size() < MOST_REMEMBERED) {
                decays.put(seconds, decay);
            }
        }
        for (int mode = 0; mode < state.length; mode++) {
            state[mode] = plant.idleTarget[mode] + (state[mode] - plant.idleTarget[mode]) * decay[mode];
        }
    }

    void rest(double[] state, double seconds) {
        for (int mode = 0; mode < state.length; mode++) {
            double idle = plant.idleTarget[mode];
            state[mode] = idle + (state[mode] - idle) * Math.exp(-seconds / plant.tauSeconds[mode]);
        }
    }

    void on(double[] state, int job) {
        double[] target = plant.target[job];
        double[] decay = plant.onDecay[job];
        for (int mode = 0; mode < state.length; mode++) {
            state[mode] = target[mode] + (state[mode] - target[mode]) * decay[mode];
        }
    }

    /**
     * Returns the point for which {@link #holds} last said no; -1 when it never did since the last call of {@link
     * #restSeconds}.
     */
    int forcing() {
        return forcing;
    }

    /**
     * Returns whether a job begun at a state keeps every limit at every moment of it, and ever after if nothing
     * followed: a point that lags may be warmest when its source is off again.
     */
    boolean holds(double[] state, int job) {
        for (int point = 0; point < plant.limit.length; point++) {
            if (!duringHolds(state, job, point) || !afterHolds(state, job, point)) {
                forcing = point;
                return false;
            }
        }
        return true;
    }

    private boolean duringHolds(double[] state, int job, int point) {
        int[] modes = plant.pointModes[point];
        double[] weights = plant.weights[point];
        double[] target = plant.target[job];
        double[] decay = plant.onDecay[job];
        double constant = plant.direct[job][point];
        double falling = 0;
        double rising = 0;
        double risen = 0;
        for (int i = 0; i < modes.length; i++) {
            int mode = modes[i];
            double amplitude = weights[i] * (state[mode] - target[mode]);
            constant += weights[i] * target[mode];
            if (amplitude > 0) {
                falling += amplitude;
            } else {
                rising += amplitude;
                risen += amplitude * decay[mode];
            }
        }
        double limit = plant.limit[point];
        if (constant + falling + risen <= limit) {
            return true;
        }
        if (falling == 0 || constant + falling + rising > limit) {
            return false;
        }
        return during(state, job, point) <= limit;
    }

    private boolean afterHolds(double[] state, int job, int point) {
        int[] modes = plant.pointModes[point];
        double[] weights = plant.weights[point];
        double constant = plant.idleDirect[point];
        double falling = 0;
        double rising = 0;
        for (int i = 0; i < modes.length; i++) {
            int mode = modes[i];
            double target = plant.target[job][mode];
            double end = target + (state[mode] - target) * plant.onDecay[job][mode];
            double amplitude = weights[i] * (end - plant.idleTarget[mode]);
            constant += weights[i] * plant.idleTarget[mode];
            if (amplitude > 0) {
                falling += amplitude;
            } else {
                rising += amplitude;
            }
        }
        double limit = plant.limit[point];
        if (constant + falling <= limit) {
            return true;
        }
        if (constant + falling + rising > limit || rising == 0) {
            return false;
        }
        return after(state, job, point) <= limit;
    }

    /** Returns the highest rise of a point above the air during a job begun at a state, in kelvins; never too low. */
    double during(double[] state, int job, int point) {
        double constant = plant.direct[job][point];
        for (int i = 0; i < plant.pointModes[point].length; i++) {
            constant += plant.weights[point][i] * plant.target[job][plant.pointModes[point][i]];
        }
        sum.reset(constant);
        for (int i = 0; i < plant.pointModes[point].length; i++) {
            int mode = plant.pointModes[point][i];
            sum.add(plant.weights[point][i] * (state[mode] - plant.target[job][mode]), plant.tauSeconds[mode]);
        }
        return sum.highest(plant.onSeconds[job]);
    }

    /** Returns the highest rise of a point above the air during a job begun at a state and ever after, in kelvins. */
    double highest(double[] state, int job, int point) {
        return Math.max(during(state, job, point), after(state, job, point));
    }

    private double after(double[] state, int job, int point) {
        double constant = plant.idleDirect[point];
        for (int i = 0; i < plant.pointModes[point].length; i++) {
            constant += plant.weights[point][i] * plant.idleTarget[plant.pointModes[point][i]];
        }
        sum.reset(constant);
        for (int i = 0; i < plant.pointModes[point].length; i++) {
            int mode = plant.pointModes[point][i];
            double target = plant.target[job][mode];
            double end = target + (state[mode] - target) * plant.onDecay[job][mode];
            sum.add(plant.weights[point][i] * (end - plant.idleTarget[mode]), plant.tauSeconds[mode]);
        }
        return sum.highestForEver();
    }

    /**
     * Returns the shortest rest from a state on, at least so many seconds, after which a job holds; NaN when no rest
     * helps. Where a job held again and again in between, it may return a longer one, never one after which the job
     * does not hold.
     */
    double restSeconds(double[] state, int job, double least) {
        forcing = -1;
        if (holdsAfter(state, job, least)) {
            return least;
        }
        double rest = least;
        for (int round = 0; round < ROUNDS; round++) {
            double next = rest;
            for (int point = 0; point < plant.limit.length; point++) {
                next = Math.max(next, atLeast(state, job, point, rest));
            }
            if (Double.isInfinite(next)) {
                return Double.NaN;
            }
            if (next == rest) {
                break;
            }
            rest = next + NUDGE_SECONDS;
            if (holdsAfter(state, job, rest)) {
                return rest;
            }
        }
        return bracketed(state, job, rest);
    }

    private boolean holdsAfter(double[] state, int job, double seconds) {
        System.arraycopy(state, 0, trial, 0, trial.length);
        rest(trial, seconds);
        return holds(trial, job);
    }

    private double bracketed(double[] state, int job, double failing) {
        double low = failing;
        double width = PRECISION_SECONDS;
        double high = low + width;
        while (!holdsAfter(state, job, high)) {
            if (high - failing > longestRestSeconds) {
                return Double.NaN;
            }
            low = high;
            width *= 2;
            high += width;
        }
        while (high - low > PRECISION_SECONDS && high - low > high * 1e-9) {
            double middle = low + (high - low) / 2;
            if (holdsAfter(state, job, middle)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return high;
    }

    /**
     * Returns a rest that is not longer than the point needs at the end of the job. The rise there, as a function of
     * the rest, is convex and falls when all its terms are positive; then Newton's steps from a rest too short never
     * pass the root.
     */
    private double atLeast(double[] state, int job, int point, double from) {
        double atEnd = plant.direct[job][point] - plant.limit[point];
        for (int i = 0; i < plant.pointModes[point].length; i++) {
            int mode = plant.pointModes[point][i];
            double target = plant.target[job][mode];
            double decay = plant.onDecay[job][mode];
            atEnd += plant.weights[point][i] * (target + (plant.idleTarget[mode] - target) * decay);
            if (plant.weights[point][i] * (state[mode] - plant.idleTarget[mode]) < 0) {
                return from;
            }
        }
        double rest = from;
        for (int step = 0; step < STEPS; step++) {
            double excess = atEnd;
            double slope = 0;
            for (int i = 0; i < plant.pointModes[point].length; i++) {
                int mode = plant.pointModes[point][i];
                double term = plant.weights[point][i]
                        * (state[mode] - plant.idleTarget[mode])
                        * plant.onDecay[job][mode]
                        * Math.exp(-rest / plant.tauSeconds[mode]);
                excess += term;
                slope += term / plant.tauSeconds[mode];
            }
            if (excess <= 0) {
                return rest;
            }
            if (atEnd >= 0 || slope == 0) {
                return Double.POSITIVE_INFINITY;
            }
            double move = excess / slope;
            rest += move;
            if (move <= NUDGE_SECONDS / 2) {
                return rest;
            }
        }
        return rest;
    }
}
