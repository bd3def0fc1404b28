// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;

class SubgroupChartTest {

    // Means 10, 11, 12 and ranges 2, 2, 5: grand mean 11, mean range 3.
    private static final List<double[]> GROUPS =
            List.of(new double[] {9, 9.5, 10, 10.5, 11}, new double[] {10, 10.5, 11, 11.5, 12}, new double[] {
                9.5, 11, 12, 13, 14.5
            });

    @Test
    void rangesSetTheLimitsWithTheTabledFactors() {
        // n = 5: A2 = 0.577, D3 = 0, D4 = 2.114, d2 = 2.326 (ISO 7870-2).
        SubgroupChart chart = SubgroupChart.of(GROUPS, SubgroupChart.Spread.RANGE);
        assertEquals(11, chart.means().centre(), 1e-12);
        assertEquals(11 + 0.577 * 3, chart.means().upper(), 0.002);
        assertEquals(11 - 0.577 * 3, chart.means().lower(), 0.002);
        assertEquals(3, chart.spreads().centre(), 1e-12);
        assertEquals(2.114 * 3, chart.spreads().upper(), 0.002);
        assertEquals(0, chart.spreads().lower());
        assertEquals(3 / 2.326, chart.sigma(), 0.0005);
    }

    @Test
    void deviationsSetTheLimitsWithTheTabledFactors() {
        // Standard deviations: sqrt(2.5)/2 = 0.790569 twice, sqrt(14.5/4) = 1.903943; mean 1.161694.
        // n = 5: A3 = 1.427, B3 = 0, B4 = 2.089, c4 = 0.9400 (ISO 7870-2).
        SubgroupChart chart = SubgroupChart.of(GROUPS, SubgroupChart.Spread.DEVIATION);
        assertEquals(1.161694, chart.spreads().centre(), 1e-6);
        assertEquals(11 + 1.427 * 1.161694, chart.means().upper(), 0.001);
        assertEquals(2.089 * 1.161694, chart.spreads().upper(), 0.001);
        assertEquals(1.161694 / 0.9400, chart.sigma(), 0.0001);
    }

    @Test
    void judgesMeansAndSpreadsOfLaterGroups() {
        SubgroupChart chart = SubgroupChart.of(GROUPS, SubgroupChart.Spread.RANGE);
        List<double[]> later = List.of(
                new double[] {11, 11, 11, 11, 11}, new double[] {12, 13, 13, 13, 14}, new double[] {7, 11, 11, 11, 14});
        assertEquals(
                List.of(new RunSignal(RunRule.BEYOND_LIMITS, 1, 1)), chart.signalsOfMeans(later, RunRule.ZONE_TESTS));
        assertEquals(List.of(2), chart.oddSpreads(later));
        assertEquals(
                "Means of 5 readings between 9.27 and 12.73 W are to be expected, and a range within a group between 0"
                        + " and 6.343 W.",
                chart.sentence("W"));
    }

    @Test
    void rejectsUnequalGroups() {
        assertThrows(IllegalArgumentException.class, () -> SubgroupChart.of(List.of(), SubgroupChart.Spread.RANGE));
        assertThrows(
                IllegalArgumentException.class,
                () -> SubgroupChart.of(
                        List.of(new double[] {1, 2}, new double[] {1, 2, 3}), SubgroupChart.Spread.RANGE));
        assertThrows(
                IllegalArgumentException.class,
                () -> SubgroupChart.of(List.of(new double[] {1}), SubgroupChart.Spread.RANGE));
    }
}
