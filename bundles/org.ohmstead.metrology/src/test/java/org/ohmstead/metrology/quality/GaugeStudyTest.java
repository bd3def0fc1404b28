// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class GaugeStudyTest {

    // Thermal impedance of ten power modules by three inspectors, three times each: R. L. Houf and D. B. Berman, IEEE
    // Transactions on Components, Hybrids, and Manufacturing Technology 11 (1988); analysed by D. C. Montgomery and
    // G. C. Runger, Quality Engineering 6 (1993). By module, inspector and repeat.
    static final double[][][] IMPEDANCE = {
        {{37, 38, 37}, {41, 41, 40}, {41, 42, 41}},
        {{42, 41, 43}, {42, 42, 42}, {43, 42, 43}},
        {{30, 31, 31}, {31, 31, 31}, {29, 30, 28}},
        {{42, 43, 42}, {43, 43, 43}, {42, 42, 42}},
        {{28, 30, 29}, {29, 30, 29}, {31, 29, 29}},
        {{42, 42, 43}, {45, 45, 45}, {44, 46, 45}},
        {{25, 26, 27}, {28, 28, 30}, {29, 27, 27}},
        {{40, 40, 40}, {43, 42, 42}, {43, 43, 41}},
        {{25, 25, 25}, {27, 29, 28}, {26, 26, 26}},
        {{35, 34, 34}, {35, 35, 34}, {35, 34, 35}}
    };

    @Test
    void tableOfThePaper() {
        // Printed: 3935.96, 39.27, 48.51, 30.67 with 9, 2, 18, 60 degrees of freedom. Probabilities: SciPy 1.17.1,
        // f.sf of the ratios 162.27027, 7.284929 and 5.272947.
        TwoWayAnova anova = TwoWayAnova.of(IMPEDANCE);
        assertEquals(3935.96, anova.rows().squares(), 0.005);
        assertEquals(39.27, anova.columns().squares(), 0.005);
        assertEquals(48.51, anova.interaction().squares(), 0.005);
        assertEquals(30.67, anova.error().squares(), 0.005);
        assertEquals(9, anova.rows().freedom());
        assertEquals(2, anova.columns().freedom());
        assertEquals(18, anova.interaction().freedom());
        assertEquals(60, anova.error().freedom());
        assertEquals(2.292030047577648e-15, anova.rowsPValue(), 1e-18);
        assertEquals(0.00480960887996594, anova.columnsPValue(), 1e-9);
        assertEquals(5.060090058923992e-07, anova.interactionPValue(), 1e-12);
    }

    @Test
    void componentsOfThePaper() {
        // Printed variance components: 48.29 modules, 0.56 inspectors, 0.73 interaction, 0.51 repeatability.
        GaugeStudy study = GaugeStudy.of(IMPEDANCE, GaugeStudy.USUAL_POOLING);
        assertFalse(study.components().pooled());
        assertEquals(48.29, study.components().rows(), 0.005);
        assertEquals(0.56, study.components().columns(), 0.005);
        assertEquals(0.73, study.components().interaction(), 0.005);
        assertEquals(0.51, study.components().repeatability(), 0.005);
        double gauge = 0.5646090534979443 + 0.7279835390946517 + 0.5111111111111112;
        assertEquals(Math.sqrt(gauge), study.gauge(), 1e-9);
        assertEquals(Math.sqrt(0.5111111111111112), study.repeatability(), 1e-9);
        assertEquals(Math.sqrt(0.5646090534979443 + 0.7279835390946517), study.reproducibility(), 1e-9);
        double total = gauge + 48.292592592592605;
        assertEquals(gauge / total, study.varianceShare().orElseThrow(), 1e-9);
        assertEquals(Math.sqrt(gauge / total), study.gaugeShare().orElseThrow(), 1e-9);
        assertEquals(6 * Math.sqrt(gauge) / 48, study.toleranceShare(48), 1e-9);
        // sqrt(2 x 48.2926/1.8037) = 7.3.
        assertEquals(7, study.distinctClasses());
        assertEquals(
                "The bench adds a standard deviation of 1.343 K/W, 19 % of the whole: the bench tells the items apart"
                        + " well enough for many purposes (7 distinct classes). Most of it is difference between the"
                        + " inspectors.",
                study.sentence("inspector", "K/W"));
    }

    @Test
    void slightInteractionIsCountedAsRepeatability() {
        // Closed form: rows 0, 10; columns 0, 2; repeats +-1 everywhere, no interaction: MS error = 8/4 = 2, pooled
        // 8/5; rows (4 x 25 x 2 - 1.6)/4 = 49.6, columns (8 - 1.6)/4 = 1.6.
        double[][][] cells = {{{-1, 1}, {1, 3}}, {{9, 11}, {11, 13}}};
        GaugeStudy pooled = GaugeStudy.of(cells, 0.25);
        assertTrue(pooled.components().pooled());
        assertEquals(1.6, pooled.components().repeatability(), 1e-12);
        assertEquals(49.6, pooled.components().rows(), 1e-12);
        assertEquals(1.6, pooled.components().columns(), 1e-12);
        GaugeStudy kept = GaugeStudy.of(cells, 1);
        assertFalse(kept.components().pooled());
        assertEquals(2, kept.components().repeatability(), 1e-12);
        assertEquals(0, kept.components().interaction());
        assertEquals(50, kept.components().rows(), 1e-12);
    }

    @Test
    void nothingThatScattersHasNoShare() {
        double[][][] level = {{{1, 1}, {1, 1}}, {{1, 1}, {1, 1}}};
        GaugeStudy study = GaugeStudy.of(level, 1);
        assertTrue(study.gaugeShare().isEmpty());
        assertEquals(1, study.distinctClasses());
        assertEquals(
                Integer.MAX_VALUE,
                GaugeStudy.of(new double[][][] {{{1, 1}, {1, 1}}, {{2, 2}, {2, 2}}}, 1)
                        .distinctClasses());
    }

    @Test
    void rejectsUnevenTables() {
        assertThrows(
                IllegalArgumentException.class,
                () -> TwoWayAnova.of(new double[][][] {{{1, 2}, {1, 2}}, {{1, 2}, {1}}}));
        assertThrows(IllegalArgumentException.class, () -> TwoWayAnova.of(new double[][][] {{{1, 2}, {1, 2}}}));
        assertThrows(IllegalArgumentException.class, () -> TwoWayAnova.of(new double[][][] {{{1}, {1}}, {{1}, {1}}}));
    }
}
