// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Stimulus;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;

/** Test logs with readings of no amplifier at all. */
final class SampleLog {
    static final String CAPTURE_SHA256 = "ab".repeat(32);
    static final double SUPPLY_VOLTS = 13.36;
    static final double AMBIENT_CELSIUS = 23.4;

    private SampleLog() {}

    static void append(Path folder, int count) throws TestLogException {
        try (TestLog log = TestLog.open(folder.resolve(TestLog.FILE_NAME))) {
            for (int number = 0; number < count; number++) {
                log.append(reading(70.5 + number));
            }
        }
    }

    static LogSnapshot of(Path folder, int count) throws TestLogException {
        append(folder, count);
        return LogReader.read(folder.resolve(TestLog.FILE_NAME), new WorkProgress() {
            @Override
            public void step(int done, int total, String what) {
                if (done > total) {
                    throw new IllegalArgumentException("done is " + done + "; it must be at most " + total);
                }
            }

            @Override
            public boolean cancelled() {
                return false;
            }
        });
    }

    /** Changes an entry in the file, past all that the log does against it. */
    static void tamper(Path folder) throws Exception {
        Path file = folder.resolve(TestLog.FILE_NAME);
        String bytes = Files.readString(file, StandardCharsets.ISO_8859_1);
        Files.writeString(file, bytes.replace("lead was tight", "lead was loose"), StandardCharsets.ISO_8859_1);
    }

    private static Reading reading(double powerWatts) {
        return reading(powerWatts, Optional.empty());
    }

    /** Returns a reading that says which specimen it is about. */
    static Reading about(Optional<Specimen> specimen) {
        return reading(70.5, specimen);
    }

    private static Reading reading(double powerWatts, Optional<Specimen> specimen) {
        return new Reading(
                "step-1",
                Mode.STEREO,
                "4ohm",
                4,
                new Stimulus.ContinuousSine(1000),
                new EndPoint.ClippingOnset(),
                Instant.parse("2026-03-02T09:14:05Z"),
                new Conditions(OptionalDouble.of(AMBIENT_CELSIUS), OptionalDouble.empty()),
                List.of(new ChannelReading(
                        "A",
                        EndPointOutcome.REACHED,
                        4.02,
                        powerWatts,
                        0.4,
                        17.8,
                        1000,
                        0.01,
                        SUPPLY_VOLTS,
                        OptionalDouble.of(17.52),
                        List.of(),
                        List.of(),
                        List.of())),
                new Provenance(
                        "cd".repeat(32),
                        "power-at-end-point",
                        "0.1.0",
                        "0.1.0",
                        "N. N.",
                        List.of(new InstrumentUsed(
                                "m1", MeterQuantity.OUTPUT_VOLTS, "Recorder", Optional.empty(), false)),
                        List.of(new CaptureUsed(CAPTURE_SHA256, "a.wav", List.of(50.0))),
                        specimen),
                List.of("The lead was tight."));
    }
}
