// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SinkNeedTest {
    // By hand: (T_j - T_a)/P - R_jc - R_cs; the third line is a published example (8 W, 2 + 1 K/W: 7.625 K/W).
    @ParameterizedTest
    @CsvSource({
        "150, 40, 30, 1, 2.0, 1.666667",
        "125, 50, 20, 1, 2.3, 1.45",
        "125, 40, 8, 1, 3, 7.625",
        "150, 40, 23, 2, 2, 1.391304"
    })
    void subtractsTheDropsOnTheWay(
            double junction, double air, double watts, int devices, double deviceKelvin, double expected) {
        HeatAnswer answer = SinkNeed.mostKelvinPerWatt(junction, air, watts, devices, deviceKelvin);
        assertEquals(expected, answer.value().orElseThrow(), 5e-7);
    }

    // A published example: 5 W through 3 + 1 + 8 K/W in air of 25 °C gives 85 °C.
    @Test
    void isConsistentWithTheTemperatureThatAChainReaches() {
        HeatModel chain = FosterChain.of(3 + 1 + 8, 10).model();
        assertEquals(85, chain.settledCelsius(0, new double[] {5}, 25), 1e-9);
        assertEquals(8, SinkNeed.mostKelvinPerWatt(85, 25, 5, 1, 4).value().orElseThrow(), 1e-12);
    }

    @Test
    void saysWhenNoSinkIsGoodEnough() {
        HeatAnswer.Impossible drop =
                assertInstanceOf(HeatAnswer.Impossible.class, SinkNeed.mostKelvinPerWatt(150, 40, 60, 1, 2));
        assertTrue(drop.sentence().contains("120.0 K"), drop.sentence());
        assertInstanceOf(HeatAnswer.Impossible.class, SinkNeed.mostKelvinPerWatt(60, 70, 1, 1, 1));
    }
}
