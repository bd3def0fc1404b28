// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.metrology.FitException;

class ClassDStageTest {
    private static final StageLoad FOUR_OHMS = StageLoad.resistor(4);
    private static final double[][] POINTS = {
        {1, 3.210063}, {12.5, 4.011620}, {25, 4.650316}, {50, 5.773240}, {100, 7.800633}
    };

    private final ClassDStage stage = new ClassDStage(3, 0.4, 0.12);

    // P_0 + k_1 (2 sqrt2/pi) I + R I² worked out with 30 digits.
    @ParameterizedTest
    @CsvSource({
        "1, 3.210063, 0.237526",
        "12.5, 4.011620, 0.757043",
        "25, 4.650316, 0.843161",
        "50, 5.773240, 0.896487",
        "100, 7.800633, 0.927638"
    })
    void losesAsItsThreeTermsSay(double outputWatts, double lossWatts, double efficiency) {
        PowerSplit split = stage.split(new Drive.Sine(FOUR_OHMS.voltsRms(outputWatts)), FOUR_OHMS);
        assertEquals(outputWatts, split.outputWatts(), 1e-9);
        assertEquals(lossWatts, split.lossWatts(), 1e-6);
        assertEquals(efficiency, split.efficiencyRatio().orElseThrow(), 1e-6);
    }

    // The same figures back from the losses above, which have six decimals.
    @Test
    void isFoundFromMeasuredPowers() throws FitException {
        List<PowerSplit> readings = new ArrayList<>();
        for (double[] point : POINTS) {
            readings.add(new PowerSplit(point[0], point[0] + point[1]));
        }
        ClassDFit fit = ClassDFit.of(readings, 4);
        assertEquals(3, fit.idleWatts().value(), 1e-5);
        assertEquals(0.4, fit.switchingVolts().value(), 1e-5);
        assertEquals(0.12, fit.pathOhms().value(), 1e-6);
        assertEquals(0.12, fit.stage().pathOhms(), 1e-6);
        assertTrue(fit.pathOhms().standardUncertainty() < 1e-6);
    }

    @Test
    void saysWhenReadingsAreTooFewOrAlike() {
        FitException few = assertThrows(
                FitException.class, () -> ClassDFit.of(List.of(new PowerSplit(1, 4), new PowerSplit(2, 6)), 4));
        assertTrue(few.getMessage().contains("at least 4"), few.getMessage());
        PowerSplit same = new PowerSplit(10, 14);
        assertThrows(FitException.class, () -> ClassDFit.of(List.of(same, same, same, same, same), 4));
    }

    // Two of four switches of 50 mohm conduct: at 50 W into 8 ohm that costs 6.25 A² x 0.1 ohm = 0.625 W.
    @Test
    void countsTwoSwitchesInTheBridge() {
        ClassDStage bridge = new ClassDStage(1.08, 0, ClassDStage.fullBridgeOhms(0.05, 0));
        StageLoad eightOhms = StageLoad.resistor(8);
        PowerSplit split = bridge.split(new Drive.Sine(eightOhms.voltsRms(50)), eightOhms);
        assertEquals(0.625 + 1.08, split.lossWatts(), 1e-9);
        assertEquals(0.9670, split.efficiencyRatio().orElseThrow(), 5e-5);
    }

    @Test
    void bridgesAsTwoChannelsIntoHalfTheLoad() {
        PowerSplit channel = stage.split(new Drive.Sine(10), StageLoad.resistor(2));
        PowerSplit pair = stage.bridgedPair().split(new Drive.Sine(20), FOUR_OHMS);
        assertEquals(2 * channel.inputWatts(), pair.inputWatts(), 1e-9);
        assertEquals(2 * channel.outputWatts(), pair.outputWatts(), 1e-9);
    }

    @Test
    void losesByTheCurrentOfAReactiveLoad() {
        StageLoad reactive = new StageLoad(4, Math.PI / 3);
        PowerSplit split = stage.split(new Drive.Sine(20), reactive);
        assertEquals(50, split.outputWatts(), 1e-9);
        assertEquals(stage.split(new Drive.Sine(20), FOUR_OHMS).lossWatts(), split.lossWatts(), 1e-12);
        assertEquals(20, stage.worstSine(reactive, 20).outputVoltsRms());
    }
}
