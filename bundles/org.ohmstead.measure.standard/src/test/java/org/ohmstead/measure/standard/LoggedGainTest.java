// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.Accuracy;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.DriverUsed;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.SweepPoint;
import org.ohmstead.signal.gain.ChannelBalance;

class LoggedGainTest {
    private static final double FULL_SCALE_VOLTS = 2;
    private static final Instant TAKEN = Instant.parse("2026-11-02T09:14:05Z");
    private static final Provenance PROVENANCE =
            new Provenance("cd".repeat(32), "org.ohmstead.power", "1", "0.1.0", "N. N.", List.of(), List.of());

    /** An amplifier with a known gain factor that clips at 20 V: levels every 3 dB from -30 dB. */
    private static ChannelReading channel(String name, double gainRatio) {
        List<SweepPoint> levels = new ArrayList<>();
        for (int driveDb = -30; driveDb <= 0; driveDb += 3) {
            double wanted = gainRatio * FULL_SCALE_VOLTS * Math.pow(10, driveDb / 20.0);
            boolean clipped = wanted > 20;
            double voltsRms = clipped ? 20 + 0.1 * (wanted - 20) : wanted;
            levels.add(new SweepPoint(
                    driveDb,
                    voltsRms,
                    voltsRms * voltsRms / 4,
                    clipped ? 0.1 : 0.001,
                    clipped ? 0.1 : 0.002,
                    clipped,
                    14.4,
                    OptionalDouble.empty(),
                    "ab".repeat(32)));
        }
        return new ChannelReading(
                name,
                EndPointOutcome.REACHED,
                4,
                100,
                0.5,
                20,
                1000,
                0.01,
                14.4,
                OptionalDouble.empty(),
                List.of(),
                levels,
                List.of());
    }

    private static Reading reading(Mode mode, ChannelReading... channels) {
        return new Reading(
                "step",
                mode,
                "4ohm",
                4,
                new Stimulus.ContinuousSine(1000),
                new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F),
                TAKEN,
                new Conditions(OptionalDouble.empty(), OptionalDouble.empty()),
                List.of(channels),
                PROVENANCE,
                List.of());
    }

    private static MeasuredFigures figures(String measurement, MeasuredFigure... figures) {
        return new MeasuredFigures(
                "step",
                Mode.STEREO,
                "4ohm",
                14.4,
                TAKEN,
                new DriverUsed("simulated", "0.1.0", BenchKind.SIMULATED, Map.of()),
                Map.of(),
                List.of(figures),
                new Conditions(OptionalDouble.empty(), OptionalDouble.empty()),
                new Provenance("cd".repeat(32), measurement, "1", "0.1.0", "N. N.", List.of(), List.of()),
                List.of());
    }

    @Test
    void theGainComesOutOfTheCleanLevelsOnly() {
        // Closed form: factors of 20 and 10 are 26.0206 and 20 dB. Factor 20 clips above 20 V: -6, -3 and 0 dB reach
        // more, so 8 levels are left.
        LoggedGain gain = LoggedGain.of(
                        reading(Mode.STEREO, channel("A", 20), channel("B", 10)), FULL_SCALE_VOLTS, Optional.empty())
                .orElseThrow();
        assertEquals(26.0206, gain.channels().get(0).gainDb(), 5e-5);
        assertEquals(8, gain.channels().get(0).levels());
        assertEquals(20, gain.channels().get(1).gainDb(), 1e-9);
        assertEquals(11, gain.channels().get(1).levels());
        assertEquals(1, gain.channels().get(0).slope().orElseThrow(), 1e-9);
        assertEquals(0, gain.channels().get(0).standardUncertaintyDb().orElseThrow(), 1e-9);
        assertEquals("A", gain.highest().name());
        assertFalse(gain.measured());
        assertFalse(gain.bridged());
        assertEquals("step", gain.stepId());
        assertEquals(TAKEN, gain.takenAt());
    }

    @Test
    void theMeterOfAllLevelsIsPartOfTheUncertainty() {
        Meter meter = new Meter(
                "v",
                MeterQuantity.OUTPUT_VOLTS,
                "Recorder",
                "",
                new Accuracy(0.01, 0, 0, 0),
                Optional.empty(),
                Optional.empty(),
                "");
        LoggedGain gain = LoggedGain.of(reading(Mode.BRIDGED, channel("A+B", 20)), FULL_SCALE_VOLTS, Optional.of(meter))
                .orElseThrow();
        // GUM 4.3.7: 1 % of reading as a bound is 0.01 / sqrt(3); 20 / ln 10 = 8.685890 dB for 1.
        assertEquals(
                8.685890 * 0.01 / Math.sqrt(3),
                gain.channels().get(0).standardUncertaintyDb().orElseThrow(),
                1e-7);
        assertTrue(gain.bridged());
    }

    @Test
    void aReadingWithoutCleanLevelsHasNoGain() {
        assertTrue(LoggedGain.of(reading(Mode.STEREO, channel("A", 2000)), FULL_SCALE_VOLTS, Optional.empty())
                .isEmpty());
        assertThrows(
                IllegalArgumentException.class,
                () -> LoggedGain.of(reading(Mode.STEREO, channel("A", 20)), 0, Optional.empty()));
    }

    @Test
    void aMeasuredGainIsTakenAsItIs() {
        LoggedGain gain = LoggedGain.of(figures(
                        "org.ohmstead.gain",
                        new MeasuredFigure("gain", "A", "", 26.1, "dB", OptionalDouble.of(0.05)),
                        new MeasuredFigure("sensitivity", "A", "1 W", 0.1, "V", OptionalDouble.empty()),
                        new MeasuredFigure("gain", "B", "", 26.3, "dB", OptionalDouble.empty())))
                .orElseThrow();
        assertTrue(gain.measured());
        assertEquals(2, gain.channels().size());
        assertEquals(26.1, gain.channels().get(0).gainDb(), 0);
        assertEquals(0.05, gain.channels().get(0).standardUncertaintyDb().orElseThrow(), 0);
        assertEquals("B", gain.highest().name());
    }

    @Test
    void figuresOfOtherMeasurementsHaveNoGain() {
        assertTrue(LoggedGain.of(figures(
                        "org.example.other", new MeasuredFigure("gain", "A", "", 26.1, "dB", OptionalDouble.empty())))
                .isEmpty());
        assertTrue(LoggedGain.of(figures("org.ohmstead.gain")).isEmpty());
    }

    @ParameterizedTest
    @CsvSource({
        "sourceVolts, 2, 2",
        "outputVolts, 1.25, 1.25",
        "generator.fullOutputVoltsRms, 5 V, 5",
        "sourceVolts, 0, NaN",
        "sourceVolts, loud, NaN",
        "supplyVolts, 14.4, NaN"
    })
    void theFullScaleOfTheSourceIsASettingOfItsBench(String setting, String text, double voltsRms) {
        MeasuredFigures found = figures("org.ohmstead.gain");
        MeasuredFigures onBench = new MeasuredFigures(
                found.stepId(),
                found.mode(),
                found.loadId(),
                found.supplyVolts(),
                found.takenAt(),
                new DriverUsed("some", "1", BenchKind.REAL, Map.of(setting, text)),
                found.settings(),
                found.figures(),
                found.conditions(),
                found.provenance(),
                found.notes());
        assertEquals(voltsRms, SourceFullScale.voltsRms(onBench).orElse(Double.NaN), 0);
    }

    @Test
    void theBalanceIsThatOfTheHighestLevelAtWhichAllAreClean() {
        // Closed form: factors of 20 and 19.5 differ by 0.219908 dB; of A, -9 dB is the highest level below 20 V.
        ChannelBalance balance = LoggedGain.balance(reading(Mode.STEREO, channel("A", 20), channel("B", 19.5)), 0.5)
                .orElseThrow();
        assertEquals(0.219908, balance.spreadDb(), 5e-7);
        assertEquals(40 * Math.pow(10, -9 / 20.0), balance.channels().get(0).voltsRms(), 1e-9);
        assertTrue(balance.matched());
    }

    @Test
    void channelsThatShareNoCleanLevelHaveNoBalance() {
        assertTrue(LoggedGain.balance(reading(Mode.STEREO, channel("A", 20), channel("B", 2000)), 0.5)
                .isEmpty());
        assertTrue(
                LoggedGain.balance(reading(Mode.SINGLE, channel("A", 20)), 0.5).isEmpty());
    }
}
