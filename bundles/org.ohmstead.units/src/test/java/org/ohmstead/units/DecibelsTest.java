// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class DecibelsTest {
    // Closed form: 10 log10 2 = 3.0103, 20 log10 2 = 6.0206.
    @Test
    void knowsPowerFromField() {
        assertEquals(3.010299957, Decibels.ofPowerRatio(2), 1e-9);
        assertEquals(6.020599913, Decibels.ofFieldRatio(2), 1e-9);
        assertEquals(2, Decibels.toPowerRatio(Decibels.ofPowerRatio(2)), 1e-12);
        assertEquals(0.5, Decibels.toFieldRatio(Decibels.ofFieldRatio(0.5)), 1e-12);
    }

    @Test
    void refusesARatioWithoutLevel() {
        assertThrows(IllegalArgumentException.class, () -> Decibels.ofPowerRatio(0));
        assertThrows(IllegalArgumentException.class, () -> Decibels.ofFieldRatio(Double.NaN));
    }
}
