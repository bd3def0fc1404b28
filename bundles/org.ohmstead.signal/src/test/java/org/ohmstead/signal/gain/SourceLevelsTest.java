// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SourceLevelsTest {
    private static final double ROUNDED = 5e-7;
    private static final double EXACT = 1e-12;

    @Test
    void zeroDbuIsAMilliwattInSixHundredOhms() {
        // Closed form: sqrt(1 mW x 600 ohm) = 0.7745967 V; 0 dBV lies 2.218487 dB above.
        assertEquals(Math.sqrt(0.001 * 600), SourceLevels.voltsOfDbu(0), EXACT);
        assertEquals(0.7745967, SourceLevels.voltsOfDbu(0), 5e-8);
        assertEquals(2.218487, SourceLevels.dbu(1), ROUNDED);
        assertEquals(0, SourceLevels.dbv(1), EXACT);
        assertEquals(1, SourceLevels.voltsOfDbv(0), EXACT);
    }

    @ParameterizedTest
    @CsvSource({"0, 5", "-10, 1.5811388", "-20, 0.5", "-6.0205999, 2.5", "6.0205999, 10"})
    void aLevelBelowFullScaleIsAShareOfItsVolts(double levelDbfs, double voltsRms) {
        // Closed form: V = V_fs 10^(L / 20).
        assertEquals(voltsRms, SourceLevels.voltsAt(levelDbfs, 5), 5e-8);
        assertEquals(levelDbfs, SourceLevels.dbfs(voltsRms, 5), 5e-7);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void refusesVoltsThatHaveNoLevel(double volts) {
        IllegalArgumentException refusal =
                assertThrows(IllegalArgumentException.class, () -> SourceLevels.dbfs(volts, 5));
        assertTrue(refusal.getMessage().contains("voltsRms is " + volts), refusal.getMessage());
        assertThrows(IllegalArgumentException.class, () -> SourceLevels.voltsAt(0, volts));
        assertThrows(IllegalArgumentException.class, () -> SourceLevels.dbu(volts));
    }
}
