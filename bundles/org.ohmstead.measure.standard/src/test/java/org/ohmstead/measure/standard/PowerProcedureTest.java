// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Accuracy;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.Bench;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Cable;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.Supply;
import org.ohmstead.model.SupplyType;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.WavFile;
import org.ohmstead.signal.Waveform;

class PowerProcedureTest {
    private static final String HASH = "0123456789abcdef".repeat(4);

    @TempDir
    private Path folder;

    /** Ideal clippers at 20 V and 19 V peak into 4 ohm; exact power at 1 % THD_F: 1.0475059 C^2/2R (closed form of the clipped sine). */
    @Test
    void findsTheDistortionLimitedPowerOfBothChannels() throws Exception {
        List<RecordedLevel> levels = new ArrayList<>();
        for (double overDb = -3; overDb <= 1.01; overDb += 0.25) {
            levels.add(recorded(
                    overDb, steady(20, 20 * Math.pow(10, overDb / 20)), steady(19, 20 * Math.pow(10, overDb / 20))));
        }
        Step step = step(new Stimulus.ContinuousSine(1000));
        Reading reading = new PowerProcedure(project(), HASH, "0.1.0", "M. Tester").evaluate(step, levels);
        ChannelReading a = reading.channels().get(0);
        ChannelReading b = reading.channels().get(1);
        assertEquals("A", a.channel());
        assertEquals(EndPointOutcome.REACHED, a.outcome());
        // Harmonics above the 20th are out of the band and levels lie 0.25 dB apart: together less than 0.2 %.
        assertEquals(1.0475059 * 400 / 8, a.powerWatts(), 0.002 * 52);
        assertEquals(1.0475059 * 361 / 8, b.powerWatts(), 0.002 * 47);
        assertEquals(b, reading.weakestChannel());
        assertEquals(levels.size(), a.sweep().size());
        assertEquals(levels.size(), reading.provenance().captures().size());
        assertEquals(HASH, reading.provenance().projectRevision());
        assertEquals(
                Optional.of(new Specimen("M-1", "", "")), reading.provenance().specimen());
        // Worked by hand: 2P/V u(V) with u = (0.5 % + 0.03 V)/sqrt 3, P/R u(R) with u = 0.01 ohm, 2P/V_s u(V_s) with u
        // = 0.01/sqrt 3 V.
        double volts = a.outputVoltsRms();
        double byHand = Math.sqrt(Math.pow(2 * a.powerWatts() / volts * (0.005 * volts + 0.03) / Math.sqrt(3), 2)
                + Math.pow(a.powerWatts() / 4 * 0.01, 2)
                + Math.pow(2 * a.powerWatts() / 14.4 * 0.01 / Math.sqrt(3), 2));
        assertEquals(byHand, a.standardUncertaintyWatts(), 0.002 * byHand);
    }

    /** Power inside the burst only: 20 ms of a 15 V peak sine into 4 ohm is 28.125 W (closed form). */
    @Test
    void countsOnlyTheInsideOfABurst() throws Exception {
        Step step = new Step(
                "s",
                Mode.STEREO,
                "4ohm",
                14.4,
                new Stimulus.ToneBurst(1000, 0.02, 0.5, -20),
                new EndPoint.FixedLevel(0),
                false);
        double[] burst = new double[28_800];
        for (int i = 0; i < burst.length; i++) {
            boolean loud = i >= 1000 && i < 1960;
            burst[i] = (loud ? 15 : 1.5) * Math.sin(2 * Math.PI * (i - 1000) / 48.0);
        }
        Reading reading =
                new PowerProcedure(project(), HASH, "0.1.0", "").evaluate(step, List.of(recorded(0, burst, burst)));
        assertEquals(28.125, reading.channels().get(0).powerWatts(), 0.01);
        EvaluationException error =
                assertThrows(EvaluationException.class, () -> new PowerProcedure(project(), HASH, "0.1.0", "")
                        .evaluate(step, List.of(recorded(0, steady(20, 10), steady(20, 10)))));
        assertTrue(error.getMessage().contains("no tone burst was found"), error.getMessage());
    }

    @Test
    void saysWhichFileDoesNotFit() throws Exception {
        Step step = step(new Stimulus.ContinuousSine(1000));
        PowerProcedure procedure = new PowerProcedure(project(), HASH, "0.1.0", "");
        Path broken = Files.writeString(folder.resolve("broken.wav"), "RIFF");
        RecordedLevel level = new RecordedLevel(
                broken,
                HASH,
                "broken.wav",
                List.of(50.0),
                0,
                14.4,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Instant.EPOCH);
        String message = assertThrows(EvaluationException.class, () -> procedure.evaluate(step, List.of(level)))
                .getMessage();
        assertTrue(message.startsWith("broken.wav: "), message);
        RecordedLevel mono = recorded(1, steady(20, 10));
        message = assertThrows(EvaluationException.class, () -> procedure.evaluate(step, List.of(mono)))
                .getMessage();
        assertTrue(message.contains("has 1 channel(s)"), message);
        assertThrows(EvaluationException.class, () -> procedure.evaluate(step, List.of()));
    }

    /** A sine clipped at +-C, band-limited as a recorder would leave it: its Fourier series (closed form) up to the 23rd harmonic. */
    private static double[] steady(double clipVolts, double drivePeakVolts) {
        double k = Math.min(1, clipVolts / drivePeakVolts);
        double theta = Math.asin(k);
        double[] wave = new double[1463];
        for (int i = 0; i < wave.length; i++) {
            double phase = 2 * Math.PI * 1000 * i / 48_000 + 0.3;
            double sum = 2 / Math.PI * (theta + k * Math.sqrt(1 - k * k)) * Math.sin(phase);
            for (int n = 3; n <= 23; n += 2) {
                double b =
                        2 / (Math.PI * n) * (Math.sin((n - 1) * theta) / (n - 1) + Math.sin((n + 1) * theta) / (n + 1));
                sum += (k < 1 ? b : 0) * Math.sin(n * phase);
            }
            wave[i] = drivePeakVolts * sum;
        }
        return wave;
    }

    private RecordedLevel recorded(double driveDb, double[]... channels) throws Exception {
        List<Waveform> waveforms = new ArrayList<>();
        for (double[] channel : channels) {
            waveforms.add(Waveform.of(48_000, channel));
        }
        Path file = folder.resolve("level" + driveDb + ".wav");
        double[] scale = new double[channels.length];
        java.util.Arrays.fill(scale, 50);
        WavFile.write(file, new Capture(waveforms, "generated", "generated"), 24, scale);
        return new RecordedLevel(
                file,
                HASH,
                file.getFileName().toString(),
                List.of(50.0),
                driveDb,
                14.4,
                OptionalDouble.of(12),
                OptionalDouble.of(40),
                OptionalDouble.of(23),
                Instant.parse("2026-03-02T09:14:05Z"));
    }

    private static Step step(Stimulus stimulus) {
        return new Step(
                "s",
                Mode.STEREO,
                "4ohm",
                14.4,
                stimulus,
                new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F),
                false);
    }

    private static Project project() {
        Accuracy output = new Accuracy(0.005, 0.03, 0, 0);
        Accuracy supply = new Accuracy(0, 0.01, 0, 0);
        Optional<LocalDate> day = Optional.of(LocalDate.of(2026, 1, 15));
        LoadBranch four = new LoadBranch(4, 0.01, 0, "");
        return new Project(
                "Made up",
                new Amplifier(
                        "",
                        "M-1",
                        "",
                        2,
                        SupplyType.UNREGULATED,
                        List.of(),
                        List.of(),
                        OptionalDouble.empty(),
                        List.of(),
                        ""),
                new Bench(
                        "",
                        new Supply("Supply", 0, 16, 100),
                        new Cable(35, 3, OptionalDouble.empty()),
                        List.of(
                                new Meter("m1", MeterQuantity.OUTPUT_VOLTS, "Recorder", "", output, day, day, ""),
                                new Meter("m2", MeterQuantity.SUPPLY_VOLTS, "Meter", "", supply, day, day, "")),
                        List.of(),
                        OptionalDouble.empty()),
                List.of(new BenchLoad("4ohm", 4, List.of(four, four), 200)),
                List.of(),
                new SheetSettings("", "", 0.95, ""));
    }
}
