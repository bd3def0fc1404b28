// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/**
 * Powers that change to and fro between two sets, for as long as one likes: each period begins with the loud part. Immutable.
 *
 * <p>The modes of a {@link HeatModel} are carried over any number of periods by their closed form, so that a day of bursts costs as much as
 * one burst. Within a period the temperature swings by the ripple about what the average powers give.
 */
public final class BurstTrain {
    private final double[] loudWatts;
    private final double loudSeconds;
    private final double[] quietWatts;
    private final double quietSeconds;

    /**
     * Makes a train.
     *
     * @param loudWatts power of each source in the loud part, in watts
     * @param loudSeconds how long it lasts, above 0
     * @param quietWatts power of each source in the quiet part, as many
     * @param quietSeconds how long it lasts, at least 0
     */
    public BurstTrain(double[] loudWatts, double loudSeconds, double[] quietWatts, double quietSeconds) {
        if (loudWatts.length != quietWatts.length) {
            throw new IllegalArgumentException("loudWatts has " + loudWatts.length + " entries and quietWatts has "
                    + quietWatts.length + "; they must be as many as there are sources");
        }
        for (int i = 0; i < loudWatts.length; i++) {
            Checks.finite(loudWatts[i], "loudWatts");
            Checks.finite(quietWatts[i], "quietWatts");
        }
        this.loudWatts = loudWatts.clone();
        this.loudSeconds = Checks.positive(loudSeconds, "loudSeconds");
        this.quietWatts = quietWatts.clone();
        this.quietSeconds = Checks.notNegative(quietSeconds, "quietSeconds");
    }

    /** Returns the power of each source in the loud part, in watts. */
    public double[] loudWatts() {
        return loudWatts.clone();
    }

    /** Returns how long the loud part lasts, in seconds. */
    public double loudSeconds() {
        return loudSeconds;
    }

    /** Returns the power of each source in the quiet part, in watts. */
    public double[] quietWatts() {
        return quietWatts.clone();
    }

    /** Returns how long the quiet part lasts, in seconds. */
    public double quietSeconds() {
        return quietSeconds;
    }

    /** Returns the length of a period in seconds. */
    public double periodSeconds() {
        return loudSeconds + quietSeconds;
    }

    /** Returns the part of a period that is loud, above 0 and up to 1. */
    public double dutyRatio() {
        return loudSeconds / periodSeconds();
    }

    /** Returns the power of each source on average, in watts. */
    public double[] averageWatts() {
        double[] average = new double[loudWatts.length];
        for (int i = 0; i < average.length; i++) {
            average[i] = (loudWatts[i] * loudSeconds + quietWatts[i] * quietSeconds) / periodSeconds();
        }
        return average;
    }

    /**
     * Moves a state on by whole periods, exactly.
     *
     * @param model whose state it is
     * @param state what to change; it stands before a loud part, and does so afterwards
     * @param periods how many, at least 0
     */
    public void advance(HeatModel model, double[] state, long periods) {
        Checks.notNegative(periods, "periods");
        double[] steady = settledBeforeLoud(model);
        for (int mode = 0; mode < state.length; mode++) {
            double left = Math.exp(-periods * periodSeconds() / model.tauSeconds(mode));
            state[mode] = steady[mode] + (state[mode] - steady[mode]) * left;
        }
    }

    /** Returns the state before a loud part after bursts for ever: the coolest moment of what one source warms. */
    public double[] settledBeforeLoud(HeatModel model) {
        double[] state = model.cold();
        for (int mode = 0; mode < state.length; mode++) {
            double tau = model.tauSeconds(mode);
            double loud = model.target(mode, loudWatts) * -Math.expm1(-loudSeconds / tau);
            double quiet = model.target(mode, quietWatts) * -Math.expm1(-quietSeconds / tau);
            state[mode] = (loud * Math.exp(-quietSeconds / tau) + quiet) / -Math.expm1(-periodSeconds() / tau);
        }
        return state;
    }

    /** Returns the state at the end of a loud part after bursts for ever. */
    public double[] settledAfterLoud(HeatModel model) {
        double[] state = settledBeforeLoud(model);
        model.advance(state, loudWatts, loudSeconds);
        return state;
    }

    /**
     * Returns the hottest that a point gets within a period after bursts for ever; its time is that from the start of the loud part. A point
     * far from its source may be hottest in the quiet part.
     */
    public HeatPeak settledPeak(HeatModel model, int point) {
        return peak(model, point, settledBeforeLoud(model));
    }

    /** Returns the hottest that a point gets within the period that begins with a state. */
    public HeatPeak peak(HeatModel model, int point, double[] state) {
        HeatPeak loud = model.peak(point, state, loudWatts, loudSeconds);
        double[] later = state.clone();
        model.advance(later, loudWatts, loudSeconds);
        HeatPeak quiet = model.peak(point, later, quietWatts, quietSeconds);
        return quiet.riseKelvin() > loud.riseKelvin()
                ? new HeatPeak(quiet.riseKelvin(), loudSeconds + quiet.afterSeconds())
                : loud;
    }

    /**
     * Returns by how much the hottest moment of a period after bursts for ever lies above what the average powers give: the ripple, in
     * kelvins.
     */
    public double rippleKelvin(HeatModel model, int point) {
        double[] average = averageWatts();
        return settledPeak(model, point).riseKelvin() - model.riseKelvin(point, model.settled(average), average);
    }
}
