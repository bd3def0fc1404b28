// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class PrecisionStudyTest {

    // NIST StRD SiRstv (analysis of variance): resistivity of silicon by five instruments, five readings each.
    static final List<double[]> RESISTIVITY = List.of(
            new double[] {196.3052, 196.1240, 196.1890, 196.2569, 196.3403},
            new double[] {196.3042, 196.3825, 196.1669, 196.3257, 196.0422},
            new double[] {196.1303, 196.2005, 196.2889, 196.0343, 196.1811},
            new double[] {196.2795, 196.1748, 196.1494, 196.1485, 195.9885},
            new double[] {196.2119, 196.1051, 196.1850, 196.0052, 196.2090});

    @Test
    void meanSquaresAreTheCertifiedOnes() {
        PrecisionStudy study = PrecisionStudy.of(RESISTIVITY);
        assertEquals(1.27865654000000e-02, study.betweenMeanSquare(), 1e-13);
        assertEquals(1.08318280000000e-02, study.withinMeanSquare(), 1e-14);
        assertEquals(1.04076068334656e-01, study.repeatability(), 1e-13);
        // P(F(4, 20) > 1.18046237440255), SciPy 1.17.1 f_oneway.
        assertEquals(0.3494474934022352, study.pValue(), 1e-9);
        assertFalse(study.groupsDiffer());
        // ISO 5725-2: s(L)² = (MS between - MS within)/n.
        double between = (1.27865654e-2 - 1.0831828e-2) / 5;
        assertEquals(Math.sqrt(between), study.between(), 1e-11);
        assertEquals(Math.sqrt(between + 1.0831828e-2), study.reproducibility(), 1e-11);
    }

    @Test
    void limitsAreTwoPointSevenSevenStandardDeviations() {
        // 1.959964 sqrt(2) = 2.771808.
        PrecisionStudy study = PrecisionStudy.of(RESISTIVITY);
        assertEquals(2.771808 * study.repeatability(), study.repeatabilityLimit(), 1e-7);
        assertEquals(2.771808 * study.reproducibility(), study.reproducibilityLimit(), 1e-7);
        assertEquals(2.771808, PrecisionStudy.limit(1, 0.95), 1e-6);
        assertEquals(
                "Two readings by the same bench should lie within 0.2885 ohm of each other 19 times in 20, two by"
                        + " different benches within 0.2936 ohm. No difference between the benches is to be seen beyond"
                        + " chance.",
                study.sentence("bench", "ohm"));
    }

    @Test
    void groupsOfUnequalSize() {
        // SciPy 1.17.1: f_oneway of the four groups. Typical size (12 - 38/12)/3 = 2.944444 (ISO 5725-2).
        List<double[]> groups = List.of(
                new double[] {99.1, 99.4, 99.2},
                new double[] {99.8, 100.1},
                new double[] {99.0, 98.9, 99.3, 99.2},
                new double[] {99.6, 99.5, 99.9});
        PrecisionStudy study = PrecisionStudy.of(groups);
        assertEquals(12.055888223552628, study.betweenMeanSquare() / study.withinMeanSquare(), 1e-9);
        assertEquals(0.002448988624890617, study.pValue(), 1e-9);
        assertTrue(study.groupsDiffer());
        assertEquals(
                (study.betweenMeanSquare() - study.withinMeanSquare()) / (53 / 18.0),
                study.between() * study.between(),
                1e-9);
        assertTrue(study.sentence("operator", "W").endsWith("The operators differ by more than chance explains."));
    }

    @Test
    void meansCloserThanChanceAddNothing() {
        PrecisionStudy study = PrecisionStudy.of(List.of(new double[] {1, 3}, new double[] {1, 3}));
        assertEquals(0, study.between());
        assertEquals(1, study.pValue());
        assertEquals(Math.sqrt(2), study.reproducibility(), 1e-12);
        assertEquals(
                0,
                PrecisionStudy.of(List.of(new double[] {1, 1}, new double[] {2, 2}))
                        .pValue());
    }

    @Test
    void rejectsWhatHasNoScatter() {
        assertThrows(IllegalArgumentException.class, () -> PrecisionStudy.of(List.of(new double[] {1, 2})));
        assertThrows(
                IllegalArgumentException.class, () -> PrecisionStudy.of(List.of(new double[] {1}, new double[] {2})));
        assertThrows(
                IllegalArgumentException.class, () -> PrecisionStudy.of(List.of(new double[0], new double[] {2, 3})));
    }
}
