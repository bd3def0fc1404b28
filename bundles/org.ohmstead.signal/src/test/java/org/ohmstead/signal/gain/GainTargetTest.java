// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GainTargetTest {
    private static final double EXACT = 1e-12;

    @Test
    void powerInALoadIsVoltsAndAmperes() {
        // Closed form: V = sqrt(P R), I = sqrt(P / R), peak sqrt(2) times RMS.
        GainTarget target = new GainTarget(100, 4, false);
        assertEquals(20, target.outputVoltsRms(), EXACT);
        assertEquals(5, target.outputAmpsRms(), EXACT);
        assertEquals(28.284271247, target.outputVoltsPeak(), 5e-9);
        assertEquals(25, target.wattsAt(10), EXACT);
        assertEquals(4, target.channelLoadOhms(), EXACT);
        assertEquals(100, target.channelPowerWatts(), EXACT);
        assertEquals(20, target.channelVoltsRms(), EXACT);
    }

    @Test
    void bridgedEachChannelSeesHalfTheLoadAndGivesHalfTheVoltsAndPower() {
        // Closed form: two channels in opposite phase add their volts across the load and share its current.
        GainTarget target = new GainTarget(400, 4, true);
        assertEquals(40, target.outputVoltsRms(), EXACT);
        assertEquals(2, target.channelLoadOhms(), EXACT);
        assertEquals(20, target.channelVoltsRms(), EXACT);
        assertEquals(200, target.channelPowerWatts(), EXACT);
        assertEquals(
                target.channelPowerWatts(),
                target.channelVoltsRms() * target.channelVoltsRms() / target.channelLoadOhms(),
                1e-9);
    }

    @ParameterizedTest
    @CsvSource({"0, 4", "-1, 4", "NaN, 4", "100, 0", "100, -4", "100, Infinity"})
    void refusesAPowerOrLoadThatCannotBe(double powerWatts, double loadOhms) {
        assertThrows(IllegalArgumentException.class, () -> new GainTarget(powerWatts, loadOhms, false));
    }

    @Test
    void aRefusalNamesTheValueAndTheRange() {
        IllegalArgumentException refusal =
                assertThrows(IllegalArgumentException.class, () -> new GainTarget(-3, 4, false));
        assertTrue(refusal.getMessage().contains("powerWatts is -3.0"), refusal.getMessage());
        assertTrue(refusal.getMessage().contains("above 0"), refusal.getMessage());
        assertThrows(IllegalArgumentException.class, () -> new GainTarget(100, 4, false).wattsAt(-1));
    }
}
