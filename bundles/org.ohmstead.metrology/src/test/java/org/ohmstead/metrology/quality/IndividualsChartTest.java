// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class IndividualsChartTest {

    // NIST/SEMATECH e-Handbook of Statistical Methods 6.3.2.2, flow rate of ten batches.
    private static final double[] BATCHES = {49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};

    @Test
    void limitsOfTheHandbook() {
        IndividualsChart chart = IndividualsChart.of(BATCHES);
        assertEquals(50.81, chart.readings().centre(), 1e-9);
        assertEquals(1.8778, chart.ranges().centre(), 0.00005);
        // Printed with d2 rounded to 1.128: 55.8041 and 45.8159.
        assertEquals(55.8041, chart.readings().upper(), 0.003);
        assertEquals(45.8159, chart.readings().lower(), 0.003);
        assertEquals(3.2665 * 1.8778, chart.ranges().upper(), 0.0005);
        assertEquals(1.8778 / 1.12838, chart.sigma(), 0.0001);
        assertTrue(chart.signals(BATCHES, RunRule.ZONE_TESTS).isEmpty());
        assertTrue(chart.jumps(BATCHES).isEmpty());
        assertEquals(
                "Readings between 45.82 and 55.8 l/h are to be expected, and successive ones within 6.134 l/h of each"
                        + " other. Only 10 readings set these limits; 20 are advised.",
                chart.sentence("l/h"));
    }

    @Test
    void findsOutlyingReadingsAndJumps() {
        IndividualsChart chart = IndividualsChart.of(BATCHES);
        double[] later = {50, 51, 56, 50.5};
        assertEquals(List.of(new RunSignal(RunRule.BEYOND_LIMITS, 2, 2)), chart.signals(later, RunRule.ZONE_TESTS));
        // 56 - 51 = 5 is within 6.134, 45 - 52 = -7 is not.
        assertTrue(chart.jumps(later).isEmpty());
        assertEquals(List.of(1), chart.jumps(new double[] {52, 45, 47}));
        assertEquals((56 - 50.81) / chart.sigma(), chart.standardised(56), 1e-9);
    }

    @Test
    void equalReadingsPointToTheResolution() {
        IndividualsChart chart = IndividualsChart.of(5, 5, 5, 5);
        assertEquals(0, chart.sigma());
        assertEquals(0, chart.standardised(5));
        assertEquals(-Double.MAX_VALUE, chart.standardised(4.9));
        assertTrue(chart.sentence("V").endsWith("resolution is too coarse for this chart."), chart.sentence("V"));
        assertEquals(1, chart.signals(new double[] {5, 5.1}, RunRule.ZONE_TESTS).size());
    }

    @Test
    void rejectsWhatSetsNoLimits() {
        assertThrows(IllegalArgumentException.class, () -> IndividualsChart.of(1));
        assertThrows(IllegalArgumentException.class, () -> IndividualsChart.of(1, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> new ControlLimits(2, 1, 3));
        assertTrue(new ControlLimits(1, 2, 3).excludes(0.99) && !new ControlLimits(1, 2, 3).excludes(3));
    }
}
