// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Step;

/** What readings tell a forecast about the powers of steps: the latest reading of each step that is still as it was. */
public final class ReadingPowers implements Function<Step, Optional<KnownPower>> {
    /** How far the supply of a reading may be from what its step wants now; else the step was changed since. */
    private static final double NEAR_VOLTS = 0.3;

    private final Map<String, Reading> latest = new HashMap<>();

    private ReadingPowers(List<Reading> readings) {
        for (Reading reading : readings) {
            latest.merge(
                    reading.stepId(), reading, (one, other) -> other.takenAt().isBefore(one.takenAt()) ? one : other);
        }
    }

    /** Returns what readings tell; those that do not count, such as voided ones, must not be among them. */
    public static ReadingPowers of(List<Reading> readings) {
        return new ReadingPowers(readings);
    }

    /** Returns the latest reading of a step as it is now: same mode, load and stimulus, near the same volts; empty when there is none. */
    public Optional<Reading> latest(Step step) {
        return Optional.ofNullable(latest.get(step.id())).filter(reading -> matches(reading, step));
    }

    /** Returns the powers that the latest reading of a step found, the mean of its channels; empty when there is none above 0. */
    @Override
    public Optional<KnownPower> apply(Step step) {
        return latest(step).flatMap(ReadingPowers::power);
    }

    private static boolean matches(Reading reading, Step step) {
        return reading.mode() == step.mode()
                && reading.loadId().equals(step.loadId())
                && reading.stimulus().equals(step.stimulus())
                && Math.abs(reading.weakestChannel().supplyVolts() - step.supplyVolts()) <= NEAR_VOLTS;
    }

    private static Optional<KnownPower> power(Reading reading) {
        double output = reading.channels().stream()
                .mapToDouble(ChannelReading::powerWatts)
                .average()
                .orElse(0);
        return output > 0 ? Optional.of(new KnownPower(output, input(reading))) : Optional.empty();
    }

    /** The mean of what the channels' own levels drew; during bursts the current read need not be that of the whole period. */
    private static OptionalDouble input(Reading reading) {
        List<ChannelReading> channels = reading.channels();
        boolean told = reading.stimulus().powerKind() == PowerKind.CONTINUOUS
                && channels.stream().allMatch(channel -> channel.supplyAmps().orElse(0) > 0);
        return told
                ? channels.stream()
                        .mapToDouble(channel ->
                                channel.supplyVolts() * channel.supplyAmps().orElseThrow())
                        .average()
                : OptionalDouble.empty();
    }
}
