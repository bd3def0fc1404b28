// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClassAbStageTest {
    private static final double PRINTED = 1e-6;
    private static final StageLoad FOUR_OHMS = StageLoad.resistor(4);

    private final ClassAbStage stage = ClassAbStage.splitRails(30);

    // Closed form of class B with a sine: P_o = m² V²/(2R), P_in = 2 m V²/(pi R), +-30 V into 4 ohm.
    @ParameterizedTest
    @CsvSource({
        "0.3535533905932738, 14.0625, 50.642793, 0.27768018",
        "0.5773502691896258, 37.5, 82.699334, 0.45344984",
        "0.5, 28.125, 71.619724, 0.39269908",
        "0.6366197723675814, 45.594533, 91.189065, 0.5",
        "0.8, 72, 114.591559, 0.62831853",
        "1, 112.5, 143.239449, 0.78539816"
    })
    void splitsASineAsTheClosedForm(double ratio, double outputWatts, double inputWatts, double efficiency) {
        PowerSplit split = stage.split(stage.atRailRatio(ratio), FOUR_OHMS);
        assertEquals(outputWatts, split.outputWatts(), PRINTED * outputWatts);
        assertEquals(inputWatts, split.inputWatts(), PRINTED * inputWatts);
        assertEquals(inputWatts - outputWatts, split.lossWatts(), PRINTED * inputWatts);
        assertEquals(efficiency, split.efficiencyRatio().orElseThrow(), 1e-8);
    }

    // Closed form: most heat at m = 2/pi: 2 V²/(pi² R) in all, V²/(pi² R) per device, half of the input.
    @Test
    void isHottestAtTwoOverPi() {
        WorstLevel worst = stage.worstSine(FOUR_OHMS, 100);
        assertEquals(45.594533, worst.split().lossWatts(), PRINTED * 45);
        assertEquals(45.594533 / 2, stage.deviceWatts(worst.split().lossWatts()), PRINTED * 45);
        assertEquals(0.5, worst.split().efficiencyRatio().orElseThrow(), 1e-12);
        assertEquals(30 * 2 / Math.PI / Math.sqrt(2), worst.outputVoltsRms(), 1e-12);
        for (int i = 1; i <= 100; i++) {
            assertTrue(stage.split(stage.atRailRatio(i / 100.0), FOUR_OHMS).lossWatts()
                    <= worst.split().lossWatts() * (1 + 1e-12));
        }
        assertEquals(5, stage.worstSine(FOUR_OHMS, 5).outputVoltsRms(), 1e-12);
    }

    // Data sheet formula of a full bridge on one supply, 2 V²/(pi² R): 5 V into 8 ohm gives 633 mW.
    @Test
    void knowsTheFullBridgeAndTheSingleSupply() {
        assertEquals(
                0.633257,
                ClassAbStage.fullBridge(5)
                        .worstSine(StageLoad.resistor(8), 5)
                        .split()
                        .lossWatts(),
                PRINTED);
        // Half bridge on one supply V: V²/(2 pi² R) in all.
        assertEquals(
                25 / (2 * Math.PI * Math.PI * 8),
                ClassAbStage.singleSupply(5)
                        .worstSine(StageLoad.resistor(8), 5)
                        .split()
                        .lossWatts(),
                1e-12);
    }

    // Two identical channels with one load between them see half of it each, at half of its volts.
    @Test
    void bridgesAsTwoChannelsIntoHalfTheLoad() {
        for (double ratio : new double[] {0.2, 0.6, 1}) {
            PowerSplit channel = stage.split(stage.atRailRatio(ratio), StageLoad.resistor(2));
            ClassAbStage pair = stage.bridgedPair();
            PowerSplit bridged = pair.split(pair.atRailRatio(ratio), FOUR_OHMS);
            assertEquals(2 * channel.outputWatts(), bridged.outputWatts(), 1e-9);
            assertEquals(2 * channel.inputWatts(), bridged.inputWatts(), 1e-9);
            assertEquals(stage.deviceWatts(channel.lossWatts()), pair.deviceWatts(bridged.lossWatts()), 1e-9);
        }
    }

    // A published worked example: +-28 V, 68 W into 4 ohm gives 23.3238 V peak, 103.939 W in, 35.9387 W of heat.
    @Test
    void agreesWithAPublishedExample() {
        ClassAbStage published = ClassAbStage.splitRails(28);
        double voltsRms = FOUR_OHMS.voltsRms(68);
        assertEquals(23.3238, voltsRms * Math.sqrt(2), 5e-5);
        PowerSplit split = published.split(new Drive.Sine(voltsRms), FOUR_OHMS);
        assertEquals(103.939, split.inputWatts(), 5e-4);
        assertEquals(35.9387, split.lossWatts(), 1e-4);
        // The sink it asks for: (T_j - T_a)/P - R_jc = 2.27814 K/W for 150 °C, 25 °C and 1.2 K/W.
        assertEquals(2.27814, (150 - 25) / split.lossWatts() - 1.2, 5e-6);
    }

    // Closed form 2 m V²/(pi |Z|) - m² V² cos(phi)/(2 |Z|) at m = 1, 30 V, 4 ohm.
    @ParameterizedTest
    @CsvSource({"0, 30.739449", "30, 45.812", "45, 63.690", "60, 86.989"})
    void getsHotterWithAReactiveLoad(double degrees, double lossWatts) {
        StageLoad load = new StageLoad(4, Math.toRadians(degrees));
        assertEquals(lossWatts, stage.split(stage.atRailRatio(1), load).lossWatts(), 5e-4);
        double worst = Math.min(1, 2 / Math.PI / Math.cos(Math.toRadians(degrees)));
        assertEquals(worst * 30 / Math.sqrt(2), stage.worstSine(load, 100).outputVoltsRms(), 1e-9);
    }

    // Gaussian amplitudes: mean of |v| = sigma sqrt(2/pi), sigma below the rails by so many decibels.
    @ParameterizedTest
    @CsvSource({"9, 28.3258, 35.3717", "10, 22.5, 34.2705", "12, 14.1965, 30.8979", "15, 7.11512, 24.8093"})
    void splitsProgrammeAsNormallyDistributed(double crestDb, double outputWatts, double lossWatts) {
        PowerSplit split = stage.split(Drive.Programme.ofCrest(30, crestDb), FOUR_OHMS);
        assertEquals(outputWatts, split.outputWatts(), 1e-5 * outputWatts);
        assertEquals(lossWatts, split.lossWatts(), 1e-5 * lossWatts);
    }

    // Closed form 2/10^(CF/10); one eighth of the power is a crest factor of 12.0412 dB.
    @ParameterizedTest
    @CsvSource({"6, 0.502377", "10, 0.2", "12, 0.126191", "15, 0.0632456", "18, 0.0316979", "20, 0.02", "12.0412, 0.125"
    })
    void turnsCrestIntoPower(double crestDb, double ratio) {
        assertEquals(ratio, Drive.powerRatioOfCrest(crestDb), 5e-6 * ratio);
    }

    @Test
    void averagesBurstsOverTime() {
        Drive.Burst burst = new Drive.Burst(20, 0.02, 2, 0.48);
        PowerSplit loud = stage.split(new Drive.Sine(20), FOUR_OHMS);
        PowerSplit quiet = stage.split(new Drive.Sine(2), FOUR_OHMS);
        PowerSplit average = stage.split(burst, FOUR_OHMS);
        assertEquals(0.04 * loud.outputWatts() + 0.96 * quiet.outputWatts(), average.outputWatts(), 1e-9);
        assertEquals(0.04 * loud.inputWatts() + 0.96 * quiet.inputWatts(), average.inputWatts(), 1e-9);
        assertEquals(loud, stage.hottestStretch(burst, FOUR_OHMS));
    }

    // A clipped sine integrated by a fine sum over one turn; the drive is 1.4 times the rails.
    @Test
    void followsASineIntoClipping() {
        int points = 200_000;
        double squares = 0;
        double rectified = 0;
        for (int i = 0; i < points; i++) {
            double volts = Math.max(-30, Math.min(30, 42 * Math.sin(2 * Math.PI * (i + 0.5) / points)));
            squares += volts * volts / points;
            rectified += Math.abs(volts) / points;
        }
        PowerSplit split = stage.split(new Drive.Sine(Math.sqrt(squares)), FOUR_OHMS);
        assertEquals(squares / 4, split.outputWatts(), 1e-9 * squares);
        assertEquals(30 * rectified / 4, split.inputWatts(), 1e-7 * split.inputWatts());
        // A square wave between the rails wastes nothing.
        PowerSplit nearly = stage.split(new Drive.Sine(29.999), FOUR_OHMS);
        assertEquals(1, nearly.efficiencyRatio().orElseThrow(), 1e-3);
    }

    @Test
    void objectsToWhatTheRailsCannotGive() {
        IllegalArgumentException thrown =
                assertThrows(IllegalArgumentException.class, () -> stage.split(new Drive.Sine(31), FOUR_OHMS));
        assertTrue(thrown.getMessage().contains("correct the rails or the level"), thrown.getMessage());
        assertTrue(stage.objection(new Drive.Sine(25), new StageLoad(4, 0.5)).isPresent());
        assertTrue(stage.objection(new Drive.Sine(25), FOUR_OHMS).isEmpty());
        assertThrows(IllegalArgumentException.class, () -> new StageLoad(-4, 0));
        assertThrows(IllegalArgumentException.class, () -> new StageLoad(4, 1.6));
    }
}
