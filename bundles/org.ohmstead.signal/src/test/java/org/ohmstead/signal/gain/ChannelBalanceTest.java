// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class ChannelBalanceTest {
    @Test
    void twoChannelsDifferByTheRatioOfTheirVolts() {
        // Closed form: 20 log10(20 / 19.5) = 0.219908 dB; (20 / 19.5)^2 = 1.051940.
        ChannelBalance balance = ChannelBalance.of(20.0, 19.5, 0.5);
        assertEquals(0.219908, balance.spreadDb(), 5e-7);
        assertEquals(1.051940, balance.powerRatio(), 5e-7);
        assertEquals(-0.219908, balance.differenceDb(1), 5e-7);
        assertEquals(0, balance.differenceDb(0), 0);
        assertEquals("A", balance.loudest().name());
        assertEquals("B", balance.softest().name());
    }

    @Test
    void theToleranceDecidesWhetherTheyMatch() {
        assertTrue(ChannelBalance.of(20, 19.5, 0.22).matched());
        assertFalse(ChannelBalance.of(20, 19.5, 0.2199).matched());
        assertTrue(ChannelBalance.of(20, 20, 0).matched());
    }

    @Test
    void ofManyTheLoudestAndTheSoftestCount() {
        ChannelBalance balance = new ChannelBalance(
                List.of(
                        new ChannelBalance.Channel("front", 10),
                        new ChannelBalance.Channel("rear", 8),
                        new ChannelBalance.Channel("sub", 16)),
                1);
        // Closed form: a factor of 2 is 6.0206 dB.
        assertEquals(6.020600, balance.spreadDb(), 5e-7);
        assertEquals(4, balance.powerRatio(), 1e-12);
        assertEquals("sub", balance.loudest().name());
        assertEquals("rear", balance.softest().name());
        assertEquals(-1.938200, balance.differenceDb(1), 5e-7);
    }

    @Test
    void refusesWhatCannotBeCompared() {
        ChannelBalance.Channel one = new ChannelBalance.Channel("A", 20);
        assertThrows(IllegalArgumentException.class, () -> new ChannelBalance(List.of(one), 0.5));
        assertThrows(IllegalArgumentException.class, () -> new ChannelBalance(List.of(one, one), 0.5));
        assertThrows(IllegalArgumentException.class, () -> ChannelBalance.of(20, 0, 0.5));
        assertThrows(IllegalArgumentException.class, () -> ChannelBalance.of(20, 20, -0.1));
        assertThrows(IllegalArgumentException.class, () -> new ChannelBalance.Channel(" ", 20));
    }
}
