// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.HarmonicFigure;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.SweepPoint;
import org.ohmstead.model.UncertaintyPart;

/** Readings to fill a log with. */
final class SampleReadings {
    private SampleReadings() {}

    static Reading reading(String stepId, Mode mode, String loadId, double powerWatts) {
        String hash = "ab".repeat(32);
        return new Reading(
                stepId,
                mode,
                loadId,
                4,
                new Stimulus.ContinuousSine(1000),
                new EndPoint.ClippingOnset(),
                Instant.parse("2026-03-02T09:14:05Z"),
                new Conditions(OptionalDouble.of(22.6), OptionalDouble.empty()),
                List.of(new ChannelReading(
                        "A",
                        EndPointOutcome.REACHED,
                        4.02,
                        powerWatts,
                        0.4,
                        17.8,
                        1000,
                        0.01,
                        13.36,
                        OptionalDouble.of(17.52),
                        List.of(new UncertaintyPart("output volts meter", 0.3, true)),
                        List.of(new SweepPoint(-3, 17.5, 76, 0.002, 0.003, false, 13.4, OptionalDouble.empty(), hash)),
                        List.of(new HarmonicFigure(2, 0.001)))),
                new Provenance(
                        "cd".repeat(32),
                        "power-at-end-point",
                        "0.1.0",
                        "0.1.0",
                        "N. N.",
                        List.of(new InstrumentUsed(
                                "m1", MeterQuantity.OUTPUT_VOLTS, "Recorder", Optional.empty(), false)),
                        List.of(new CaptureUsed(hash, "a.wav", List.of(50.0)))),
                List.of("The supply sagged."));
    }

    static Reading reading(int number) {
        return reading("step-" + number, Mode.STEREO, "4ohm", 70.5 + number);
    }
}
