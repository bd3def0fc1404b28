// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpeakerLoadTest {
    private static final SpeakerLoad COIL = new SpeakerLoad(4, 0.5e-3, OptionalDouble.empty(), Optional.empty());

    @Test
    void takesRealPowerFromTheResistanceAlone() {
        // |Z| = sqrt(4^2 + pi^2), phase atan(pi / 4); the power is V^2 R / |Z|^2, not V^2 / |Z|.
        assertEquals(5.086217, COIL.at(1000).magnitudeOhms(), 1e-6);
        assertEquals(38.1460, COIL.at(1000).phaseDegrees(), 5e-5);
        assertEquals(15.46216, COIL.realPowerWatts(10, 1000), 5e-6);
        assertEquals(19.661, COIL.at(1000).apparentVoltAmps(10), 5e-4);
    }

    @Test
    void addsTheWholeResistanceAtTheResonance() {
        SpeakerLoad.Resonance resonance = SpeakerLoad.Resonance.of(50, 3, 20);
        assertEquals(50, resonance.frequencyHz(), 1e-12 * 50);
        SpeakerLoad load = new SpeakerLoad(4, 0, OptionalDouble.empty(), Optional.of(resonance));
        assertEquals(24, load.at(50).magnitudeOhms(), 1e-9);
        assertEquals(0, load.at(50).phaseDegrees(), 1e-9);
        // Of a parallel circuit the impedance is down by sqrt(2) where f/f0 - f0/f = +-1/Q.
        double upper = 50 * (1 + Math.sqrt(1 + 4 * 9.0)) / 6;
        Impedance half = load.at(upper);
        assertEquals(20 / Math.sqrt(2), Math.hypot(half.resistanceOhms() - 4, half.reactanceOhms()), 1e-9);
        assertEquals(-45, Math.toDegrees(Math.atan2(half.reactanceOhms(), half.resistanceOhms() - 4)), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"20", "45", "60", "200", "1000", "20000"})
    void agreesWithComplexArithmetic(double frequencyHz) {
        SpeakerLoad load = new SpeakerLoad(
                3.4, 0.4e-3, OptionalDouble.of(8), Optional.of(new SpeakerLoad.Resonance(25, 20e-3, 400e-6)));
        double omega = 2 * Math.PI * frequencyHz;
        Complex coil = new Complex(0, omega * 0.4e-3);
        Complex expected = coil.multiply(8)
                .divide(coil.add(8))
                .add(3.4)
                .add(new Complex(1 / 25.0, omega * 400e-6 - 1 / (omega * 20e-3)).reciprocal());
        assertEquals(expected.getReal(), load.at(frequencyHz).resistanceOhms(), 1e-12 * expected.norm());
        assertEquals(expected.getImaginary(), load.at(frequencyHz).reactanceOhms(), 1e-12 * expected.norm());
        assertEquals(100 * expected.reciprocal().getReal(), load.realPowerWatts(10, frequencyHz), 1e-10);
    }

    /** Class-B heat at full swing on +-30 V rails into 4 ohm by phase: 2 V^2 / (pi |Z|) - V^2 cos phi / (2 |Z|). */
    @ParameterizedTest
    @CsvSource({"0, 30.739", "30, 45.812", "45, 63.690", "60, 86.989"})
    void heatsTheOutputStageByThePhase(double degrees, double watts) {
        Impedance load = new Impedance(4 * Math.cos(Math.toRadians(degrees)), 4 * Math.sin(Math.toRadians(degrees)));
        assertEquals(watts, OutputStageHeat.watts(30, 1, load), 5.1e-4);
    }

    @Test
    void heatsTheOutputStageMostAtTwoOverPi() {
        // 2 V^2 / (pi^2 R) = 45.594533 W at m = 2 / pi into a resistance; at 60 degrees the worst is full swing.
        Impedance load = new Impedance(4, 0);
        assertEquals(2 / Math.PI, OutputStageHeat.worstPeakRatio(load), 1e-12);
        assertEquals(45.594533, OutputStageHeat.watts(30, 2 / Math.PI, load), 1e-6);
        assertEquals(1, OutputStageHeat.worstPeakRatio(new Impedance(2, 2 * Math.sqrt(3))), 0);
        assertThrows(IllegalArgumentException.class, () -> OutputStageHeat.watts(30, 1.1, load));
    }
}
