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
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

class MethodComparisonTest {

    private static final int TRIALS = 1_000_000;
    private static final long SEED = 20260103;

    private static MethodComparison compare(
            Estimate gum, ToDoubleFunction<double[]> model, List<Distribution> inputs, int digits) {
        MonteCarlo result = MonteCarlo.run(model, inputs, TRIALS, SEED);
        return MethodComparison.of(gum, result, IntervalKind.SHORTEST, 0.95, digits);
    }

    @Test
    void additiveModelsOfTheSupplement() {
        // JCGM 101 9.2: normal inputs agree; one dominating rectangle gives +-17.0 instead of +-19.9 (delta 0.5).
        List<Distribution> normals = Collections.nCopies(4, new Distribution.Normal(0, 1));
        MethodComparison first =
                compare(Estimate.of(0, 2), x -> Arrays.stream(x).sum(), normals, 2);
        assertClose(0.05, first.tolerance(), REL_EXACT);
        assertTrue(first.agrees(), first.sentence("V"));
        assertTrue(first.note("V").isEmpty());
        assertEquals(
                "The law of propagation and the Monte Carlo calculation give the same 95 % interval to within 0.05 V.",
                first.sentence("V"));
        double root = Math.sqrt(3);
        Distribution narrow = new Distribution.Rectangular(-root, root);
        MethodComparison third = compare(
                Estimate.of(0, Math.sqrt(103)),
                x -> Arrays.stream(x).sum(),
                List.of(narrow, narrow, narrow, new Distribution.Rectangular(-10 * root, 10 * root)),
                2);
        assertClose(0.5, third.tolerance(), REL_EXACT);
        assertEquals(2.88, third.upperDifference(), 0.15);
        assertEquals(2.88, third.lowerDifference(), 0.15);
        assertFalse(third.agrees());
        assertTrue(third.note("V").orElseThrow().contains("is too wide. Report the Monte Carlo interval."));
    }

    @Test
    void massCalibrationAgreesOnlyToSecondOrder() {
        // JCGM 101 9.3 with one digit, delta = 0.005 mg: [1.1285, 1.3395] and [1.0870, 1.3810] against
        // [1.0834, 1.3825], so the differences are 0.0451 and 0.0430, then 0.0036 and 0.0015.
        ToDoubleFunction<double[]> model = x -> (x[0] + x[1]) * (1 + (x[2] - 1.2) * (1 / x[3] - 1 / x[4])) - 100_000;
        List<Distribution> inputs = List.of(
                new Distribution.Normal(100_000, 0.050),
                new Distribution.Normal(1.234, 0.020),
                new Distribution.Rectangular(1.10, 1.30),
                new Distribution.Rectangular(7000, 9000),
                new Distribution.Rectangular(7950, 8050));
        MethodComparison first = compare(Estimate.of(1.2340, 0.0539), model, inputs, 1);
        assertClose(0.005, first.tolerance(), REL_EXACT);
        assertEquals(1.1285, first.gumInterval().lower(), 0.0002);
        assertEquals(1.3395, first.gumInterval().upper(), 0.0002);
        assertEquals(0.0451, first.lowerDifference(), 0.002);
        assertEquals(0.0430, first.upperDifference(), 0.002);
        assertFalse(first.agrees());
        assertTrue(first.sentence("mg").contains("is too narrow"), first.sentence("mg"));
        MethodComparison second = compare(Estimate.of(1.2340, 0.0750), model, inputs, 1);
        assertEquals(1.0870, second.gumInterval().lower(), 0.0002);
        assertTrue(second.agrees(), second.sentence("mg"));
    }

    @Test
    void comparisonLossNeverAgrees() {
        // JCGM 101 9.4, values in 1e-6: u = 2 u x1 to first order, 0 at x1 = 0.
        for (double x1 : new double[] {0, 0.010, 0.050}) {
            MonteCarlo result = MonteCarlo.run(
                    x -> (x[0] * x[0] + x[1] * x[1]) * 1e6,
                    List.of(new Distribution.Normal(x1, 0.005), new Distribution.Normal(0, 0.005)),
                    100_000,
                    SEED);
            Estimate gum = Estimate.of(x1 * x1 * 1e6, 2 * 0.005 * x1 * 1e6);
            MethodComparison comparison = MethodComparison.of(gum, result, IntervalKind.SHORTEST, 0.95, 2);
            assertFalse(comparison.agrees());
        }
    }

    @Test
    void aShiftedIntervalIsCalledSo() {
        MethodComparison comparison = new MethodComparison(
                Estimate.of(1, 1),
                new CoverageInterval(-1, 3, 0.95),
                Estimate.of(2, 1),
                new CoverageInterval(0, 4, 0.95),
                0.05);
        assertEquals(
                "The law of propagation gives a 95 % interval from -1 to 3 W, the Monte Carlo calculation one from 0 to"
                        + " 4 W. They differ by more than 0.05 W: the interval of the law of propagation lies to one"
                        + " side. Report the Monte Carlo interval.",
                comparison.sentence("W"));
    }

    @Test
    void certainResultsAgreeExactly() {
        MonteCarlo certain = MonteCarlo.run(x -> 4, List.of(new Distribution.Normal(0, 1)), 100, SEED);
        assertTrue(MethodComparison.of(Estimate.of(4, 0), certain, IntervalKind.SYMMETRIC, 0.95, 2)
                .agrees());
        assertFalse(MethodComparison.of(Estimate.of(4.1, 0), certain, IntervalKind.SYMMETRIC, 0.95, 2)
                .agrees());
    }

    @Test
    void comparesOnlyEqualProbabilities() {
        CoverageInterval one = new CoverageInterval(0, 1, 0.95);
        CoverageInterval other = new CoverageInterval(0, 1, 0.99);
        Estimate estimate = Estimate.of(0.5, 0.2);
        assertThrows(IllegalArgumentException.class, () -> new MethodComparison(estimate, one, estimate, other, 0.1));
    }
}
