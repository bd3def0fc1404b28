// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FrequencyWeightingTest {
    /** The table of the standard is rounded to 0.1 dB, so an exact value may be 0.05 dB away. */
    private static final double TABLE_DB = 0.0501;

    @ParameterizedTest
    @CsvSource({
        // n, A in the table of IEC 61672-1, A of the closed form, C in the table, C of the closed form.
        "10, -70.4, -70.4304, -14.3, -14.3300",
        "11, -63.4, -63.3711, -11.2, -11.2486",
        "12, -56.7, -56.6881, -8.5, -8.5307",
        "13, -50.5, -50.4522, -6.2, -6.2401",
        "14, -44.7, -44.7030, -4.4, -4.4055",
        "15, -39.4, -39.4400, -3.0, -3.0103",
        "16, -34.6, -34.6303, -2.0, -1.9987",
        "17, -30.2, -30.2282, -1.3, -1.2940",
        "18, -26.2, -26.1943, -0.8, -0.8180",
        "19, -22.5, -22.5038, -0.5, -0.5038",
        "20, -19.1, -19.1428, -0.3, -0.2996",
        "21, -16.1, -16.0984, -0.2, -0.1685",
        "22, -13.4, -13.3503, -0.1, -0.0851",
        "23, -10.9, -10.8704, 0.0, -0.0325",
        "24, -8.6, -8.6303, 0.0, -0.0000",
        "25, -6.6, -6.6110, 0.0, 0.0193",
        "26, -4.8, -4.8084, 0.0, 0.0294",
        "27, -3.2, -3.2327, 0.0, 0.0326",
        "28, -1.9, -1.9005, 0.0, 0.0294",
        "29, -0.8, -0.8239, 0.0, 0.0193",
        "30, 0.0, 0.0000, 0.0, 0.0000",
        "31, 0.6, 0.5912, 0.0, -0.0325",
        "32, 1.0, 0.9807, -0.1, -0.0851",
        "33, 1.2, 1.1999, -0.2, -0.1685",
        "34, 1.3, 1.2707, -0.3, -0.2996",
        "35, 1.2, 1.1987, -0.5, -0.5038",
        "36, 1.0, 0.9699, -0.8, -0.8180",
        "37, 0.5, 0.5487, -1.3, -1.2940",
        "38, -0.1, -0.1212, -2.0, -1.9987",
        "39, -1.1, -1.1107, -3.0, -3.0103",
        "40, -2.5, -2.4918, -4.4, -4.4055",
        "41, -4.3, -4.3175, -6.2, -6.2401",
        "42, -6.6, -6.6026, -8.5, -8.5307",
        "43, -9.3, -9.3169, -11.2, -11.2486"
    })
    void agreesWithTheTable(int n, double aTableDb, double aDb, double cTableDb, double cDb) {
        double frequencyHz = 1000 * Math.pow(10, (n - 30) / 10.0);
        assertEquals(aTableDb, FrequencyWeighting.A.gainDb(frequencyHz), TABLE_DB);
        assertEquals(cTableDb, FrequencyWeighting.C.gainDb(frequencyHz), TABLE_DB);
        assertEquals(aDb, FrequencyWeighting.A.gainDb(frequencyHz), 0.00006);
        assertEquals(cDb, FrequencyWeighting.C.gainDb(frequencyHz), 0.00006);
        assertEquals(0, FrequencyWeighting.Z.gainDb(frequencyHz), 1e-12);
    }

    @Test
    void gainAsARatioIsThatInDb() {
        assertEquals(Math.pow(10, -19.1428 / 20), FrequencyWeighting.A.gainRatio(100), 1e-6);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void refusesOtherFrequencies(double frequencyHz) {
        assertThrows(IllegalArgumentException.class, () -> FrequencyWeighting.A.gainDb(frequencyHz));
    }
}
