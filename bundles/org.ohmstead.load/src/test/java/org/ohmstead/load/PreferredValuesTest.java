// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class PreferredValuesTest {
    @Test
    void listsTheSmallSeriesOfIec60063() {
        assertEquals(List.of(1.0, 2.2, 4.7), PreferredValues.E3.decade());
        assertEquals(List.of(1.0, 1.5, 2.2, 3.3, 4.7, 6.8), PreferredValues.E6.decade());
        assertEquals(List.of(1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2), PreferredValues.E12.decade());
    }

    @Test
    void departsFromTheFormulaExactlyWhereIec60063Does() {
        List<Double> departures = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            double formula = Math.round(Math.pow(10, i / 24.0) * 10) / 10.0;
            if (PreferredValues.E24.decade().get(i) != formula) {
                departures.add(PreferredValues.E24.decade().get(i));
            }
        }
        assertEquals(List.of(2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 8.2), departures);
        assertTrue(PreferredValues.E192.decade().contains(9.20));
        assertFalse(PreferredValues.E192.decade().contains(9.19));
    }

    @Test
    void nestsTheFineSeries() {
        // IEC 60063: E48 is every other value of E96, which is every other value of E192. First values of E96 as
        // tabulated.
        assertEquals(
                List.of(1.00, 1.02, 1.05, 1.07, 1.10, 1.13, 1.15, 1.18, 1.21, 1.24),
                PreferredValues.E96.decade().subList(0, 10));
        assertEquals(List.of(9.53, 9.76), PreferredValues.E96.decade().subList(94, 96));
        for (int i = 0; i < 48; i++) {
            assertEquals(
                    PreferredValues.E48.decade().get(i),
                    PreferredValues.E96.decade().get(2 * i));
        }
        for (int i = 0; i < 96; i++) {
            assertEquals(
                    PreferredValues.E96.decade().get(i),
                    PreferredValues.E192.decade().get(2 * i));
        }
        for (PreferredValues series : PreferredValues.values()) {
            assertEquals(
                    Integer.parseInt(series.name().substring(1)),
                    series.decade().stream().distinct().count());
            assertEquals(series.decade().stream().sorted().toList(), series.decade());
        }
    }

    @Test
    void findsTheNearest() {
        assertEquals(3.9, PreferredValues.E24.nearest(4.0));
        assertEquals(-0.025, PreferredValues.E24.deviationRatio(4.0), 1e-12);
        assertEquals(4.02, PreferredValues.E96.nearest(4.0));
        assertEquals(0.005, PreferredValues.E96.deviationRatio(4.0), 1e-12);
        assertEquals(0.47, PreferredValues.E12.nearest(0.5));
        assertEquals(1000, PreferredValues.E3.nearest(990));
        assertEquals(4.7, PreferredValues.E3.nearest(7.34));
        assertEquals(10, PreferredValues.E3.nearest(7.36));
        assertTrue(PreferredValues.E12.contains(8200));
        assertFalse(PreferredValues.E12.contains(9100));
        assertThrows(IllegalArgumentException.class, () -> PreferredValues.E12.nearest(0));
    }

    @Test
    void listsThoseBetweenWithBothEnds() {
        assertEquals(List.of(0.68, 1.0, 1.5, 2.2), PreferredValues.E6.between(0.68, 2.2));
        assertEquals(13, PreferredValues.E12.between(1, 10).size());
        assertThrows(IllegalArgumentException.class, () -> PreferredValues.E12.between(10, 1));
    }
}
