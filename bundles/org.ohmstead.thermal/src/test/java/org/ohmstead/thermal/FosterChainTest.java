// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FosterChainTest {
    private static final double PRINTED = 1e-6;

    private static final FosterChain CHAIN = new FosterChain(List.of(
            new FosterStage(0.05, 0.002),
            new FosterStage(0.25, 0.05),
            new FosterStage(0.6, 1.5),
            new FosterStage(1.2, 400)));

    // Closed form: Z = sum R_i (1 - e^(-t/tau_i)), evaluated with 30 digits.
    @ParameterizedTest
    @CsvSource({
        "0.001, 0.0250267", "0.01, 0.0989971", "0.02, 0.1404246", "0.1, 0.3051620", "0.5, 0.4715689",
        "1, 0.5949460", "10, 0.9288645", "60, 1.0671504", "300, 1.5331601", "1000, 2.0014980"
    })
    void hasTheImpedanceOfTheClosedForm(double seconds, double kelvinPerWatt) {
        assertEquals(kelvinPerWatt, CHAIN.kelvinPerWattAfter(seconds), PRINTED);
        assertEquals(kelvinPerWatt, CHAIN.risesKelvin(PowerProfile.constant(1), new double[] {seconds})[0], PRINTED);
    }

    @Test
    void endsAtTheSumOfItsResistances() {
        assertEquals(2.1, CHAIN.kelvinPerWatt(), 1e-12);
    }

    // Closed form of the pulse train (geometric series of each stage), checked against direct summation with 30 digits.
    @ParameterizedTest
    @CsvSource({
        "0.02, 0.5, 0.2084848, 0.0683340, 0.1404246, 0.1461825, 0.1600525",
        "0.5, 1, 1.2499058, 0.8500942, 0.4715689, 0.5603869, 0.6639092",
        "1, 10, 0.7136762, 0.1193791, 0.5949460, 0.5982398, 0.6191653",
        "0.001, 0.01, 0.2272977, 0.2028495, 0.0250267, 0.0296124, 0.0473315"
    })
    void hasTheRippleOfThePulseTrain(
            double on, double period, double peak, double trough, double first, double second, double tenth) {
        assertEquals(peak, CHAIN.pulsePeakKelvinPerWatt(on, period), PRINTED);
        assertEquals(trough, CHAIN.pulseTroughKelvinPerWatt(on, period), PRINTED);
        assertEquals(first, CHAIN.pulsePeakKelvinPerWattAfter(on, period, 1), PRINTED);
        assertEquals(second, CHAIN.pulsePeakKelvinPerWattAfter(on, period, 2), PRINTED);
        assertEquals(tenth, CHAIN.pulsePeakKelvinPerWattAfter(on, period, 10), PRINTED);
    }

    @ParameterizedTest
    @CsvSource({"0.02, 0.5", "0.5, 1", "1, 10", "0.001, 0.01"})
    void agreesWithPulsesGoneThroughOneByOne(double on, double period) {
        List<PowerStep> steps = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            steps.add(new PowerStep(on, 1));
            steps.add(new PowerStep(period - on, 0));
        }
        double rise = CHAIN.risesKelvin(new PowerProfile(steps), new double[] {9 * period + on})[0];
        assertEquals(rise, CHAIN.pulsePeakKelvinPerWattAfter(on, period, 10), 1e-12);
    }

    @Test
    void refusesAPulseLongerThanItsPeriod() {
        assertThrows(IllegalArgumentException.class, () -> CHAIN.pulsePeakKelvinPerWatt(2, 1));
        assertThrows(IllegalArgumentException.class, () -> new FosterStage(1, -5));
    }
}
