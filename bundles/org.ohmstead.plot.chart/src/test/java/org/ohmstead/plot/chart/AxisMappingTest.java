// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.ohmstead.plot.Scale;

class AxisMappingTest {
    private static final double TOLERANCE = 1e-9;

    @Test
    void linearMiddleIsTheArithmeticMean() {
        AxisMapping mapping = new AxisMapping(Scale.LINEAR, 10, 16, 50, 350);
        assertEquals(200, mapping.toPosition(13), TOLERANCE);
        assertEquals(13, mapping.toValue(200), TOLERANCE);
    }

    @Test
    void logMiddleIsTheGeometricMean() {
        AxisMapping mapping = new AxisMapping(Scale.LOG, 20, 20_000, 300, 100);
        assertEquals(200, mapping.toPosition(Math.sqrt(20.0 * 20_000)), TOLERANCE);
        assertEquals(Math.sqrt(20.0 * 20_000), mapping.toValue(200), 1e-6);
        assertEquals(Double.POSITIVE_INFINITY, mapping.toPosition(0));
    }

    @Test
    void rejectsEndsThatAreNoRange() {
        assertThrows(IllegalArgumentException.class, () -> new AxisMapping(Scale.LINEAR, 1, 1, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> new AxisMapping(Scale.LOG, 0, 1, 0, 1));
    }
}
