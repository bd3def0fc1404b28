// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.UncertaintyPart;

/** A made-up reading into 4 ohm, built piece by piece; channel "A", then "B" and so on. */
public final class SampleReading {
    private final List<ChannelReading> channels = new ArrayList<>();
    private String takenAt = "2026-03-02T09:00:00Z";
    private String meterId = "m1";
    private String operator = "N. N.";
    private String procedure = "org.example.power";
    private Optional<Specimen> specimen = Optional.empty();
    private EndPoint endPoint = new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F);

    /** Returns one without channels. */
    public static SampleReading at(String takenAt) {
        SampleReading sample = new SampleReading();
        sample.takenAt = takenAt;
        return sample;
    }

    /** Adds a channel with a part of its own and one that it shares with others. */
    public SampleReading channel(double supplyVolts, double powerWatts, double ownWatts, double sharedWatts) {
        return channel(supplyVolts, powerWatts, ownWatts, sharedWatts, EndPointOutcome.REACHED);
    }

    /** Adds a channel that ended so. */
    public SampleReading channel(
            double supplyVolts, double powerWatts, double ownWatts, double sharedWatts, EndPointOutcome outcome) {
        channels.add(new ChannelReading(
                String.valueOf((char) ('A' + channels.size())),
                outcome,
                4,
                powerWatts,
                Math.hypot(ownWatts, sharedWatts),
                Math.sqrt(4 * powerWatts),
                1000,
                0.01,
                supplyVolts,
                OptionalDouble.empty(),
                List.of(
                        new UncertaintyPart("output volts (meter)", sharedWatts, true),
                        new UncertaintyPart("interpolation between levels", ownWatts, false)),
                List.of(),
                List.of()));
        return this;
    }

    /** Uses another meter. */
    public SampleReading meter(String id) {
        meterId = id;
        return this;
    }

    /** Names another operator. */
    public SampleReading operator(String name) {
        operator = name;
        return this;
    }

    /** Says of which specimen. */
    public SampleReading of(String amplifier, String serialNumber, String bench) {
        specimen = Optional.of(new Specimen(amplifier, serialNumber, bench));
        return this;
    }

    /** Ends the search for power otherwise. */
    public SampleReading endPoint(EndPoint other) {
        endPoint = other;
        return this;
    }

    /** Returns the reading. */
    public Reading reading() {
        Provenance provenance = new Provenance(
                SampleProject.REVISION,
                procedure,
                "1",
                "0.1.0",
                operator,
                List.of(new InstrumentUsed(meterId, MeterQuantity.OUTPUT_VOLTS, "Recorder", Optional.empty(), false)),
                List.of());
        return new Reading(
                "s1",
                Mode.STEREO,
                "4ohm",
                4,
                new Stimulus.ContinuousSine(1000),
                endPoint,
                Instant.parse(takenAt),
                new Conditions(OptionalDouble.empty(), OptionalDouble.empty()),
                channels,
                specimen.map(provenance::withSpecimen).orElse(provenance),
                List.of());
    }
}
