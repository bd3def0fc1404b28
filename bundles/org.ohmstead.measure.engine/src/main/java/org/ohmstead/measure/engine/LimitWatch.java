// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.List;
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
import org.ohmstead.units.text.Said;

/**
 * Compares what is seen with the stop limits. Output power is the mean square of a recorded channel over the resistance it works into;
 * in a recording of bursts it is the mean over bursts and pauses.
 */
final class LimitWatch {
    private final List<StopLimit> limits;
    private final List<StopLimit> keptLimits;
    private final List<LoadBranch> branches;

    /** Watches limits; the log says why in the words of the kept ones. */
    LimitWatch(List<StopLimit> limits, List<StopLimit> keptLimits, Subject subject) {
        this.limits = limits;
        this.keptLimits = keptLimits;
        this.branches = subject.load().branches();
    }

    /** Returns whether meters tell anything that is limited. */
    boolean needsMeters() {
        return limits.stream().anyMatch(limit -> limit.quantity() != Quantity.OUTPUT_WATTS);
    }

    /** Returns sentences about limits that a bench cannot watch. */
    List<Said> blindSpots(Set<Ability> abilities) {
        return limits.stream()
                .filter(limit -> !abilities.contains(ability(limit.quantity())))
                .map(limit -> Sentences.of("limit.blind", Said.of(ability(limit.quantity())::words), reason(limit)))
                .toList();
    }

    private Said reason(StopLimit limit) {
        return new Said(keptLimits.get(limits.indexOf(limit)).reason(), limit.reason());
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
                .map(limit -> new RunOutcome.Stopped(
                        limit,
                        value,
                        Sentences.of(
                                "limit." + quantity.name(),
                                Sentences.four(value),
                                Sentences.four(limit.highest()),
                                reason(limit)),
                        List.of()));
    }
}
