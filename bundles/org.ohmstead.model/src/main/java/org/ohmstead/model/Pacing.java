// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * How long the handling of a bench takes, and how much room is to be left below each limit.
 *
 * @param stepSeconds how long a step's signal is on, above 0
 * @param loadChangeSeconds from the end of one step to the start of the next when the load is strapped anew, at least 0
 * @param modeChangeSeconds the same when the amplifier is wired for another mode, at least 0
 * @param supplyChangeSeconds the same when only the supply volts change, at least 0
 * @param marginKelvin how far every temperature is to stay below its limit, at least 0
 * @param currentMarginRatio which part of each current limit is to be left free, 0 to below 1
 * @param warmUp whether the run begins with the preconditioning of 16 CFR 432
 * @param rests rests that the user put before steps; each step once
 */
public record Pacing(
        double stepSeconds,
        double loadChangeSeconds,
        double modeChangeSeconds,
        double supplyChangeSeconds,
        double marginKelvin,
        double currentMarginRatio,
        boolean warmUp,
        List<Rest> rests) {
    /** What holds until the user says otherwise; common practice, no source. */
    public static final Pacing USUAL = new Pacing(20, 120, 180, 10, 5, 0.1, false, List.of());

    private static final double MOST_OF_IT = 0.95;

    public Pacing {
        Checks.positive(stepSeconds, "stepSeconds");
        Checks.notNegative(loadChangeSeconds, "loadChangeSeconds");
        Checks.notNegative(modeChangeSeconds, "modeChangeSeconds");
        Checks.notNegative(supplyChangeSeconds, "supplyChangeSeconds");
        Checks.notNegative(marginKelvin, "marginKelvin");
        Checks.within(currentMarginRatio, 0, MOST_OF_IT, "currentMarginRatio");
        rests = List.copyOf(rests);
        Set<String> steps = new HashSet<>();
        for (Rest rest : rests) {
            if (!steps.add(rest.stepId())) {
                throw new IllegalArgumentException("rests is holding the step \"" + rest.stepId() + "\" twice");
            }
        }
    }

    /** Returns the rest that the user put before a step, in seconds; empty when none. */
    public OptionalDouble restSecondsBefore(String stepId) {
        return rests.stream()
                .filter(rest -> rest.stepId().equals(stepId))
                .mapToDouble(Rest::seconds)
                .findFirst();
    }

    /** Returns this pacing with other rests of the user's. */
    public Pacing withRests(List<Rest> newRests) {
        return new Pacing(
                stepSeconds,
                loadChangeSeconds,
                modeChangeSeconds,
                supplyChangeSeconds,
                marginKelvin,
                currentMarginRatio,
                warmUp,
                newRests);
    }

    /** Returns this pacing with another length of a step's signal in seconds. */
    public Pacing withStepSeconds(double newStepSeconds) {
        return new Pacing(
                newStepSeconds,
                loadChangeSeconds,
                modeChangeSeconds,
                supplyChangeSeconds,
                marginKelvin,
                currentMarginRatio,
                warmUp,
                rests);
    }

    /** Returns this pacing with another time of a change of load in seconds. */
    public Pacing withLoadChangeSeconds(double newLoadChangeSeconds) {
        return new Pacing(
                stepSeconds,
                newLoadChangeSeconds,
                modeChangeSeconds,
                supplyChangeSeconds,
                marginKelvin,
                currentMarginRatio,
                warmUp,
                rests);
    }

    /** Returns this pacing with another time of a change of mode in seconds. */
    public Pacing withModeChangeSeconds(double newModeChangeSeconds) {
        return new Pacing(
                stepSeconds,
                loadChangeSeconds,
                newModeChangeSeconds,
                supplyChangeSeconds,
                marginKelvin,
                currentMarginRatio,
                warmUp,
                rests);
    }

    /** Returns this pacing with another time of a change of supply volts in seconds. */
    public Pacing withSupplyChangeSeconds(double newSupplyChangeSeconds) {
        return new Pacing(
                stepSeconds,
                loadChangeSeconds,
                modeChangeSeconds,
                newSupplyChangeSeconds,
                marginKelvin,
                currentMarginRatio,
                warmUp,
                rests);
    }

    /** Returns this pacing with another margin below temperatures in kelvins. */
    public Pacing withMarginKelvin(double newMarginKelvin) {
        return new Pacing(
                stepSeconds,
                loadChangeSeconds,
                modeChangeSeconds,
                supplyChangeSeconds,
                newMarginKelvin,
                currentMarginRatio,
                warmUp,
                rests);
    }

    /** Returns this pacing with another margin below currents. */
    public Pacing withCurrentMarginRatio(double newCurrentMarginRatio) {
        return new Pacing(
                stepSeconds,
                loadChangeSeconds,
                modeChangeSeconds,
                supplyChangeSeconds,
                marginKelvin,
                newCurrentMarginRatio,
                warmUp,
                rests);
    }

    /** Returns this pacing with another answer: whether it begins with preconditioning. */
    public Pacing withWarmUp(boolean newWarmUp) {
        return new Pacing(
                stepSeconds,
                loadChangeSeconds,
                modeChangeSeconds,
                supplyChangeSeconds,
                marginKelvin,
                currentMarginRatio,
                newWarmUp,
                rests);
    }
}
