// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.bench.RecordingSource.Recorded;
import org.ohmstead.model.Mode;
import org.ohmstead.model.SupplyType;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.WavFile;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.Waveforms;

class ReplayedBenchDriverTest {
    private static final Subject SUBJECT = Subjects.of(2, SupplyType.UNREGULATED, Mode.STEREO);

    @TempDir
    private Path folder;

    private Recorded recorded(double driveDb, double peakVolts) throws Exception {
        Waveform wave = Waveforms.sine(48_000, 2400, 1000, peakVolts, 0);
        Path file = folder.resolve("level" + driveDb + ".wav");
        WavFile.write(file, new Capture(List.of(wave, wave), "made", "made"), 24, new double[] {50});
        return new Recorded(
                file,
                driveDb,
                List.of(50.0, 50.0),
                14.38,
                OptionalDouble.of(3),
                OptionalDouble.empty(),
                OptionalDouble.of(22),
                Instant.parse("2026-03-02T09:14:05Z"));
    }

    private Bench open(List<Recorded> recordings) throws Exception {
        ReplayedBenchDriver driver = new ReplayedBenchDriver((where, subject) -> {
            assertEquals(folder, where);
            return recordings;
        });
        return driver.open(SUBJECT, Settings.of(driver.info().settings(), Map.of("folder", folder.toString())));
    }

    @Test
    void givesBackWhatWasRecordedAtALevel() throws Exception {
        try (Bench bench = open(List.of(recorded(-10, 12), recorded(-20, 4)))) {
            assertTrue(bench.abilities().contains(Ability.SUPPLY_AMPS));
            assertFalse(bench.abilities().contains(Ability.CASE_CELSIUS));
            bench.connect(Mode.STEREO, SUBJECT.load());
            bench.setSupplyVolts(14.4);
            bench.feed(Feed.Tone.of(1000, -20.01));
            Acquisition acquisition = bench.acquire(3);
            assertEquals(2400, acquisition.output().size());
            assertEquals(4, acquisition.output().channels().get(1).voltsAt(12), 1e-4);
            assertEquals(14.38, acquisition.during().supplyVolts().orElseThrow());
            assertEquals(
                    Instant.parse("2026-03-02T09:14:05Z"), acquisition.during().at());
        }
    }

    @Test
    void refusesWhatWasNotRecorded() throws Exception {
        Recorded gone = recorded(-30, 1);
        try (Bench bench = open(List.of(recorded(-10, 12), recorded(-20, 4), gone))) {
            assertThrows(MeasurementException.class, () -> bench.setSupplyVolts(12));
            assertThrows(MeasurementException.class, () -> bench.connect(Mode.BRIDGED, SUBJECT.load()));
            assertThrows(MeasurementException.class, () -> bench.feed(Feed.Tone.of(40, -10)));
            assertThrows(MeasurementException.class, () -> bench.feed(new Feed.Burst(1000, -10, 0.02, 0.5, -20)));
            assertThrows(MeasurementException.class, () -> bench.acquire(1));
            String message = assertThrows(MeasurementException.class, () -> bench.feed(Feed.Tone.of(1000, -15)))
                    .getMessage();
            assertEquals(
                    "Nothing was recorded at -15.00 dB. Ask for the recorded levels: -30.0, -20.0, -10.0.", message);
            bench.feed(Feed.Tone.of(1000, -30));
            Files.delete(gone.file());
            message = assertThrows(MeasurementException.class, () -> bench.acquire(1))
                    .getMessage();
            assertTrue(message.startsWith("level-30.0.wav: "), message);
            bench.standDown();
            assertThrows(MeasurementException.class, () -> bench.feed(Feed.Tone.of(1000, -10)));
            bench.setSupplyVolts(14.4);
            bench.feed(Feed.Tone.of(1000, -10));
        }
        assertThrows(MeasurementException.class, () -> open(List.of()));
    }
}
