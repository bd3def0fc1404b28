// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PartCorrelation;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.SweepPoint;
import org.ohmstead.signal.Waveform;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.LogEntry;

@Timeout(60)
class PowerReadingTest {
    @TempDir
    Path folder;

    /** The content's hash as it is documented: big-endian doubles, which is what a data stream writes. */
    private static String contentHash(Acquisition acquisition) {
        try {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            DataOutputStream out = new DataOutputStream(bytes);
            for (Waveform channel : acquisition.output().channels()) {
                out.writeDouble(channel.sampleRateHz());
                for (double volts : channel.toArray()) {
                    out.writeDouble(volts);
                }
            }
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes.toByteArray()));
        } catch (IOException | NoSuchAlgorithmException never) {
            throw new IllegalStateException(never);
        }
    }

    private static final List<PartCorrelation> CORRELATIONS = List.of(new PartCorrelation("volts", "load", 0.5));

    private static MeasurementResult reading(String stepId, String hash) {
        Reading reading = new Reading(
                stepId,
                Mode.STEREO,
                "4ohm",
                4,
                new Stimulus.ContinuousSine(1000),
                new EndPoint.ClippingOnset(),
                Instant.parse("2026-03-02T09:14:05Z"),
                new Conditions(OptionalDouble.empty(), OptionalDouble.empty()),
                List.of(new ChannelReading(
                        "A",
                        EndPointOutcome.REACHED,
                        4,
                        2,
                        0.01,
                        2.83,
                        1000,
                        0.001,
                        14.4,
                        OptionalDouble.empty(),
                        List.of(),
                        List.of(new SweepPoint(-3, 2.83, 2, 0.001, 0.001, false, 14.4, OptionalDouble.empty(), hash)),
                        List.of(),
                        CORRELATIONS)),
                new Provenance(
                        "not logged yet",
                        "x",
                        "y",
                        "z",
                        "",
                        List.of(),
                        List.of(new CaptureUsed(hash, "recording-01", List.of(20.0, 20.0)))),
                List.of());
        return new MeasurementResult(List.of(), Optional.of(reading), List.of());
    }

    private static FakeMeasurement ofStep(String stepId) {
        return new FakeMeasurement(Stage.BAD, (bench, progress) -> {
            Acquisition acquisition = bench.acquire(0.01);
            progress.recorded(acquisition);
            return reading(stepId, contentHash(acquisition));
        });
    }

    @Test
    void aReadingIsLoggedWithItsRecordingsAsTheyLieInTheStore() throws Exception {
        try (Stage stage = new Stage(folder, ofStep("s1"))) {
            assertInstanceOf(RunOutcome.Finished.class, stage.plan.run(stage.first));
            assertEquals(
                    List.of("R0001", "F0001"), stage.plan.state().items().get(0).entryIds());
            Reading reading = stage.log.entry("R0001").orElseThrow().reading().orElseThrow();
            CaptureUsed capture = reading.provenance().captures().get(0);
            Path file = folder.resolve("captures")
                    .resolve(capture.sha256().substring(0, 2))
                    .resolve(capture.sha256() + ".wav");
            assertEquals(capture.sha256(), CaptureStore.sha256(file));
            assertEquals(
                    capture.sha256(), reading.channels().get(0).sweep().get(0).captureSha256());
            assertEquals(FakeProject.REVISION, reading.provenance().projectRevision());
            assertEquals(Stage.BAD, reading.provenance().procedureId());
            assertEquals("1.2.3", reading.provenance().procedureVersion());
            assertEquals(
                    Optional.of(new Specimen("Made-up Workshop M-1", "0001", "Bench 1")),
                    reading.provenance().specimen());
            assertEquals(CORRELATIONS, reading.channels().get(0).correlations());
            assertTrue(reading.notes().toString().contains("simulated"));
            LogEntry figures = stage.log.entry("F0001").orElseThrow();
            assertEquals(FakeDriver.ID, figures.figures().orElseThrow().driver().id());
            assertTrue(stage.log.verify().intact());
        }
    }

    @Test
    void aVoidedReadingMakesTheStepOpenAgainThoughItsFiguresStand() throws Exception {
        try (Stage stage = new Stage(folder, ofStep("s1"))) {
            stage.plan.run(stage.first);
            stage.reopen();
            assertEquals(
                    List.of("R0001", "F0001"), stage.plan.state().items().get(0).entryIds());
            stage.plan.voidEntry("R0001", "a lead was loose", "N. N.");
            assertEquals(
                    ItemState.Status.PENDING, stage.plan.state().items().get(0).status());
        }
    }

    @Test
    void aReadingOfAnotherStepIsRefused() throws Exception {
        try (Stage stage = new Stage(folder, ofStep("s2"))) {
            RunOutcome.Failed failed = stage.failsAndGoesOn(PluginKind.MEASUREMENT, true);
            assertTrue(failed.sentence().contains("gave a reading of the step \"s2\""), failed.sentence());
        }
    }

    @Test
    void aReadingOnARecordingThatWasNotHandedInIsRefused() throws Exception {
        FakeMeasurement measurement =
                new FakeMeasurement(Stage.BAD, (bench, progress) -> reading("s1", "ab".repeat(32)));
        try (Stage stage = new Stage(folder, measurement)) {
            RunOutcome.Failed failed = stage.failsAndGoesOn(PluginKind.MEASUREMENT, true);
            assertTrue(failed.sentence().contains("which it did not hand in"), failed.sentence());
        }
    }
}
