// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.StopLimit;
import org.ohmstead.model.StopLimit.Quantity;
import org.ohmstead.signal.Waveform;

/**
 * Compares what is seen with the stop limits. Output power is the mean square of a recorded channel over the resistance it works into;
 * in a recording of bursts it is the mean over bursts and pauses.
 */
final class LimitWatch {
    private final List<StopLimit> limits;
    private final List<LoadBranch> branches;

    LimitWatch(List<StopLimit> limits, Subject subject) {
        this.limits = limits;
        this.branches = subject.load().branches();
    }

    /** Returns whether meters tell anything that is limited. */
    boolean needsMeters() {
        return limits.stream().anyMatch(limit -> limit.quantity() != Quantity.OUTPUT_WATTS);
    }

    /** Returns sentences about limits that a bench cannot watch. */
    List<String> blindSpots(Set<Ability> abilities) {
        return limits.stream()
                .filter(limit -> !abilities.contains(ability(limit.quantity())))
                .map(limit -> "The bench cannot " + ability(limit.quantity()).words()
                        + ", so nobody but you watches this limit: " + limit.reason())
                .toList();
    }

    private static Ability ability(Quantity quantity) {
        return switch (quantity) {
            case SUPPLY_AMPS -> Ability.SUPPLY_AMPS;
            case CASE_CELSIUS -> Ability.CASE_CELSIUS;
            case OUTPUT_WATTS -> Ability.WAVEFORM;
        };
    }

    Optional<RunOutcome.Stopped> passed(Observation seen) {
        return passed(Quantity.SUPPLY_AMPS, seen.supplyAmps())
                .or(() -> passed(Quantity.CASE_CELSIUS, seen.caseCelsius()));
    }

    Optional<RunOutcome.Stopped> passed(Acquisition seen) {
        Optional<RunOutcome.Stopped> byMeters = passed(seen.during());
        List<Waveform> channels = seen.output().channels();
        for (int channel = 0; byMeters.isEmpty() && channel < channels.size(); channel++) {
            double loadOhms =
                    branches.get(Math.min(channel, branches.size() - 1)).ohms();
            double outputWatts = meanSquare(channels.get(channel)) / loadOhms;
            byMeters = passed(Quantity.OUTPUT_WATTS, OptionalDouble.of(outputWatts));
        }
        return byMeters;
    }

    private static double meanSquare(Waveform waveform) {
        double sum = 0;
        for (int i = 0; i < waveform.size(); i++) {
            sum += waveform.voltsAt(i) * waveform.voltsAt(i);
        }
        return sum / waveform.size();
    }

    private Optional<RunOutcome.Stopped> passed(Quantity quantity, OptionalDouble seen) {
        if (seen.isEmpty()) {
            return Optional.empty();
        }
        double value = seen.getAsDouble();
        return limits.stream()
                .filter(limit -> limit.quantity() == quantity && value > limit.highest())
                .findFirst()
                .map(limit -> new RunOutcome.Stopped(limit, value, sentence(limit, value), List.of()));
    }

    private static String sentence(StopLimit limit, double value) {
        String what =
                switch (limit.quantity()) {
                    case SUPPLY_AMPS -> "The supply current of %.4g A is above the limit of %.4g A. %s";
                    case CASE_CELSIUS -> "The case's temperature of %.4g \u00b0C is above the limit of %.4g \u00b0C. %s";
                    case OUTPUT_WATTS -> "The output power of %.4g W is above the limit of %.4g W. %s";
                };
        return "The step was stopped. " + String.format(Locale.ROOT, what, value, limit.highest(), limit.reason());
    }
}
