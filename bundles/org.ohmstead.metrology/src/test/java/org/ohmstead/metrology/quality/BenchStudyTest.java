// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.ohmstead.metrology.internal.Well;

class BenchStudyTest {

    @Test
    void sharesFollowFromTheComponents() {
        // The components of the published study (see GaugeStudyTest): 48.2926, 0.5646, 0.7280 and 0.5111.
        BenchStudy study = BenchStudy.of(GaugeStudyTest.IMPEDANCE, 1);
        double total = 48.292592592592605 + 0.5646090534979443 + 0.7279835390946517 + 0.5111111111111112;
        assertEquals(48.292592592592605 / total, study.operatorShare(), 1e-9);
        assertEquals(0.5646090534979443 / total, study.benchShare(), 1e-9);
        assertEquals(0.7279835390946517 / total, study.interactionShare(), 1e-9);
        assertEquals(0.5111111111111112 / total, study.repeatabilityShare(), 1e-9);
        assertEquals(Math.sqrt(total), study.reproducibility(), 1e-9);
        assertEquals(2.771808 * Math.sqrt(0.5111111111111112), study.repeatabilityLimit(), 1e-6);
        assertEquals(2.771808 * Math.sqrt(total), study.reproducibilityLimit(), 1e-5);
        assertEquals(
                "Two readings by the same operator on the same bench should lie within 1.982 W of each other 19 times"
                        + " in 20, any two readings within 19.62 W. Of the variance 96.4 % comes from the operators, 1.13"
                        + " % from the benches, 1.45 % from both together and 1.02 % from repeating.",
                study.sentence("W"));
    }

    @Test
    void recoversWhatWasPutIn() {
        // Random effects with variances 4 (operators), 1 (benches), 0.25 (both) and 0.25 (repeats).
        Well random = new Well(5);
        int many = 60;
        double[] operators = new double[many];
        double[] benches = new double[many];
        Arrays.setAll(operators, i -> 2 * random.nextGaussian());
        Arrays.setAll(benches, i -> random.nextGaussian());
        double[][][] cells = new double[many][many][3];
        for (int i = 0; i < many; i++) {
            for (int j = 0; j < many; j++) {
                double both = 0.5 * random.nextGaussian();
                for (int k = 0; k < 3; k++) {
                    cells[i][j][k] = 100 + operators[i] + benches[j] + both + 0.5 * random.nextGaussian();
                }
            }
        }
        TwoWayAnova.Components components = BenchStudy.of(cells, 0.25).components();
        // Relative standard deviation of a variance from 59 degrees of freedom: sqrt(2/59) = 0.18.
        assertEquals(4, components.rows(), 4 * 0.55);
        assertEquals(1, components.columns(), 0.55);
        assertEquals(0.25, components.interaction(), 0.03);
        assertEquals(0.25, components.repeatability(), 0.02);
    }

    @Test
    void nothingThatScattersHasNoShares() {
        BenchStudy study = BenchStudy.of(new double[][][] {{{1, 1}, {1, 1}}, {{1, 1}, {1, 1}}}, 1);
        assertEquals(0, study.operatorShare());
        assertEquals(0, study.repeatabilityShare());
    }
}
