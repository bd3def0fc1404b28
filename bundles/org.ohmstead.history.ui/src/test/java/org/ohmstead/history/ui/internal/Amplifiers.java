// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.UncertaintyPart;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;

/** Readings of amplifiers whose power is known in closed form. */
final class Amplifiers {
    private Amplifiers() {}

    /** Closed form: V_peak = 2.2 V - 2 into whatever load, P = V_peak^2 / 2R. */
    static double watts(double supplyVolts, double loadOhms) {
        double peak = 2.2 * supplyVolts - 2;
        return peak * peak / (2 * loadOhms);
    }

    /** Makes the folder of a project like the demo's. */
    static Path project(Path folder) throws IOException {
        Files.createDirectories(folder);
        Files.copy(Path.of("../../demo-data/larkspur.ohmstead/project.json"), folder.resolve("project.json"));
        return folder;
    }

    /** Writes readings into 4 ohm, in stereo, at 12 to 15 V, with so many times the power of the closed form. */
    static void write(Path folder, String serialNumber, String day, double times) throws TestLogException {
        try (TestLog log = TestLog.open(folder.resolve(TestLog.FILE_NAME))) {
            int hour = 8;
            for (double volts : new double[] {12, 13.5, 14.4, 15}) {
                log.append(reading(serialNumber, day + "T" + (hour < 10 ? "0" : "") + hour + ":00:00Z", volts, times));
                hour++;
            }
        }
    }

    private static Reading reading(String serialNumber, String takenAt, double supplyVolts, double times) {
        double watts = times * watts(supplyVolts, 4);
        return new Reading(
                "stereo-4ohm",
                Mode.STEREO,
                "l4",
                4,
                new Stimulus.ContinuousSine(1000),
                new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F),
                Instant.parse(takenAt),
                new Conditions(OptionalDouble.empty(), OptionalDouble.empty()),
                List.of(channel("A", supplyVolts, 1.01 * watts), channel("B", supplyVolts, watts)),
                new Provenance("0", "p", "1", "1", "N. N.", List.of(), List.of())
                        .withSpecimen(new Specimen("Larkspur 2x100", serialNumber, "Bench 1")),
                List.of());
    }

    private static ChannelReading channel(String name, double supplyVolts, double watts) {
        return new ChannelReading(
                name,
                EndPointOutcome.REACHED,
                4,
                watts,
                0.005 * watts,
                Math.sqrt(watts * 4),
                1000,
                0.01,
                supplyVolts,
                OptionalDouble.empty(),
                List.of(new UncertaintyPart("output volts (meter)", 0.005 * watts, true)),
                List.of(),
                List.of());
    }
}
