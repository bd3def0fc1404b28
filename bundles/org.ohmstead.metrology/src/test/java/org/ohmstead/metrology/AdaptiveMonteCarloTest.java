// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.metrology.Tolerances.REL_EXACT;
import static org.ohmstead.metrology.Tolerances.assertClose;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class AdaptiveMonteCarloTest {

    private static final long SEED = 20260102;

    @Test
    void drawsUntilTheFiguresOfTheSupplementStandStill() {
        // JCGM 101 9.2.2 and 9.2.3 with two digits: delta = 0.05, intervals +-3.92 and +-3.88.
        AdaptiveMonteCarlo normals = AdaptiveMonteCarlo.run(
                x -> Arrays.stream(x).sum(),
                Collections.nCopies(4, new Distribution.Normal(0, 1)),
                AdaptiveMonteCarlo.Settings.USUAL,
                SEED);
        assertTrue(normals.settled());
        assertClose(0.05, normals.tolerance(), REL_EXACT);
        assertEquals(3.92, normals.interval().upper(), 0.05);
        assertEquals(-3.92, normals.interval().lower(), 0.05);
        assertEquals(2, normals.result().standardUncertainty(), 0.05);
        double root = Math.sqrt(3);
        AdaptiveMonteCarlo rectangulars = AdaptiveMonteCarlo.run(
                x -> Arrays.stream(x).sum(),
                Collections.nCopies(4, new Distribution.Rectangular(-root, root)),
                new AdaptiveMonteCarlo.Settings(0.95, 2, IntervalKind.SYMMETRIC, 5_000_000),
                SEED);
        assertTrue(rectangulars.settled());
        assertEquals(3.879407, rectangulars.interval().upper(), 0.05);
        assertEquals(
                "After " + rectangulars.trials()
                        + " random trials the result and its interval stand still to within 0.05 W.",
                rectangulars.sentence("W"));
    }

    @Test
    void oneDigitTakesFewerTrialsThanTwo() {
        List<Distribution> inputs = List.of(new Distribution.Normal(0, 1), new Distribution.Rectangular(-1, 1));
        AdaptiveMonteCarlo.Settings coarse = new AdaptiveMonteCarlo.Settings(0.95, 1, IntervalKind.SHORTEST, 5_000_000);
        AdaptiveMonteCarlo one = AdaptiveMonteCarlo.run(x -> x[0] + x[1], inputs, coarse, SEED);
        AdaptiveMonteCarlo two =
                AdaptiveMonteCarlo.run(x -> x[0] + x[1], inputs, AdaptiveMonteCarlo.Settings.USUAL, SEED);
        assertTrue(one.trials() < two.trials(), one.trials() + " " + two.trials());
        // sqrt(1 + 1/3) = 1.1547.
        assertEquals(1.1547, two.result().standardUncertainty(), 0.05);
    }

    @Test
    void givesTheNumbersOfAsManyPlainTrials() {
        List<Distribution> inputs = List.of(new Distribution.Normal(3, 0.5), new Distribution.Arcsine(-1, 1));
        AdaptiveMonteCarlo adaptive =
                AdaptiveMonteCarlo.run(x -> x[0] * x[0] + x[1], inputs, AdaptiveMonteCarlo.Settings.USUAL, SEED);
        MonteCarlo plain = MonteCarlo.run(x -> x[0] * x[0] + x[1], inputs, adaptive.trials(), SEED);
        assertEquals(plain.mean(), adaptive.result().mean());
        assertEquals(plain.standardUncertainty(), adaptive.result().standardUncertainty());
        assertEquals(plain.shortestInterval(0.95), adaptive.interval());
        assertEquals(adaptive.trials(), adaptive.blocks() * 10_000);
    }

    @Test
    void correlatedInputsOfTheComparisonLoss() {
        // JCGM 101 9.4.3 with r = 0.9: mean x1² + 2u², variance 4 u² x1² + 4 u⁴ (1 + r²), closed forms of jointly
        // normal inputs; values in 1e-6.
        double square = 25;
        Covariance covariance = Covariance.of(new double[][] {{25e-6, 22.5e-6}, {22.5e-6, 25e-6}});
        for (double x1 : new double[] {0, 0.010, 0.050}) {
            MonteCarlo result = MonteCarlo.run(
                    x -> (x[0] * x[0] + x[1] * x[1]) * 1e6, new double[] {x1, 0}, covariance, 300_000, SEED);
            double large = x1 * x1 * 1e6;
            assertClose(large + 2 * square, result.mean(), 0.008);
            assertClose(Math.sqrt(4 * square * large + 4 * square * square * 1.81), result.standardUncertainty(), 0.01);
        }
        AdaptiveMonteCarlo adaptive = AdaptiveMonteCarlo.run(
                x -> (x[0] * x[0] + x[1] * x[1]) * 1e6,
                new double[] {0, 0},
                covariance,
                new AdaptiveMonteCarlo.Settings(0.95, 1, IntervalKind.SHORTEST, 5_000_000),
                SEED);
        assertEquals(50, adaptive.result().mean(), 5);
    }

    @Test
    void givesUpAtTheLargestNumberOfTrials() {
        AdaptiveMonteCarlo result = AdaptiveMonteCarlo.run(
                x -> x[0],
                List.of(new Distribution.Normal(0, 2)),
                new AdaptiveMonteCarlo.Settings(0.95, 4, IntervalKind.SHORTEST, 39_999),
                SEED);
        assertFalse(result.settled());
        assertEquals(30_000, result.trials());
        assertTrue(result.sentence("V").contains("still move by more than 0.0005 V"), result.sentence("V"));
    }

    @Test
    void aCertainResultStandsStillAtOnce() {
        AdaptiveMonteCarlo result = AdaptiveMonteCarlo.run(
                x -> 7, List.of(new Distribution.Normal(0, 1)), AdaptiveMonteCarlo.Settings.USUAL, SEED);
        assertTrue(result.settled());
        assertEquals(20_000, result.trials());
        assertEquals(0, result.tolerance());
        assertEquals(0, result.interval().width());
    }

    @Test
    void aHighProbabilityTakesLargerBlocks() {
        // JCGM 101 7.9.4 b: at least 100/(1 - p) trials in a block.
        assertThrows(
                IllegalArgumentException.class,
                () -> new AdaptiveMonteCarlo.Settings(0.999, 1, IntervalKind.SYMMETRIC, 150_000));
        AdaptiveMonteCarlo result = AdaptiveMonteCarlo.run(
                x -> x[0],
                List.of(new Distribution.Normal(0, 1)),
                new AdaptiveMonteCarlo.Settings(0.999, 1, IntervalKind.SYMMETRIC, 1_000_000),
                SEED);
        assertTrue(result.trials() >= 200_000 && result.trials() / result.blocks() >= 99_999);
        // Normal quantile of 0.9995: 3.2905.
        assertEquals(3.2905, result.interval().upper(), 0.1);
    }
}
