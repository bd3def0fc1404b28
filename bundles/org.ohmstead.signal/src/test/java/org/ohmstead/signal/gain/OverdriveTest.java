// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class OverdriveTest {
    @ParameterizedTest
    @CsvSource({
        // Closed form of the clipped sine, six printed digits: drive in dB, harmonics over fundamental in %, power
        // ratio.
        "0.1, 0.336867, 1.020303",
        "0.5, 2.18893, 1.087478",
        "1, 4.63156, 1.157052",
        "2, 9.24994, 1.270555",
        "3, 13.3795, 1.362518",
        "6, 23.2371, 1.562913",
        "10, 32.1637, 1.728803",
        "20, 43.0397, 1.915032"
    })
    void aCutOffSineHasThePowerAndDistortionOfItsClosedForm(double beyondDb, double thdPercent, double powerRatio) {
        Overdrive wave = new Overdrive(beyondDb);
        assertEquals(powerRatio, wave.powerRatio(), 6e-7);
        assertEquals(thdPercent, 100 * wave.thdFRatio(), 6e-5);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.2, 3, 12, 40})
    void thePowerIsThatOfSamplesOfTheWave(double beyondDb) {
        // Rectangle rule over whole cycles: mean square of the cut-off sine over that of the sine that just clips.
        int samples = 400_000;
        double peak = Math.pow(10, beyondDb / 20);
        double squares = 0;
        int flat = 0;
        for (int i = 0; i < samples; i++) {
            double wave = peak * Math.sin(2 * Math.PI * (i + 0.5) / samples);
            double cut = Math.max(-1, Math.min(1, wave));
            squares += cut * cut;
            flat += Math.abs(wave) >= 1 ? 1 : 0;
        }
        Overdrive overdrive = new Overdrive(beyondDb);
        assertEquals(2 * squares / samples, overdrive.powerRatio(), 1e-7);
        assertEquals(flat / (double) samples, overdrive.flatTimeRatio(), 2e-5);
    }

    @Test
    void theLimitsAreTheSineAndTheSquareWave() {
        assertEquals(1, new Overdrive(0).powerRatio(), 1e-12);
        assertEquals(0, new Overdrive(0).thdFRatio(), 1e-7);
        // Closed form: a square wave has twice the power and harmonics of sqrt(pi^2 / 8 - 1) over its fundamental.
        assertEquals(2, new Overdrive(160).powerRatio(), 1e-7);
        assertEquals(Math.sqrt(Math.PI * Math.PI / 8 - 1), new Overdrive(120).thdFRatio(), 1e-5);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.1, 201, Double.NaN})
    void refusesWhatIsNotBeyondClipping(double beyondDb) {
        assertThrows(IllegalArgumentException.class, () -> new Overdrive(beyondDb));
    }
}
