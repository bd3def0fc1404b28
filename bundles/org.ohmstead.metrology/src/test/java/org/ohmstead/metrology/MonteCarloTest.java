// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.ohmstead.metrology.Tolerances.assertClose;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MonteCarloTest {

    private static final int TRIALS = 1_000_000;
    private static final long SEED = 20260101;

    private static double sum(double[] x) {
        return Arrays.stream(x).sum();
    }

    @Test
    void sumOfFourNormals() {
        // JCGM 101 9.2.2: u = 2, 95 % interval +-3.92.
        MonteCarlo result = MonteCarlo.run(
                MonteCarloTest::sum, Collections.nCopies(4, new Distribution.Normal(0, 1)), TRIALS, SEED);
        assertEquals(0, result.mean(), 0.008);
        assertClose(2, result.standardUncertainty(), 0.003);
        assertEquals(3.92, result.symmetricInterval(0.95).upper(), 0.02);
        assertEquals(-3.92, result.symmetricInterval(0.95).lower(), 0.02);
        assertEquals(7.84, result.shortestInterval(0.95).width(), 0.03);
    }

    @Test
    void sumOfFourRectangulars() {
        // JCGM 101 9.2.3, closed form for the end of the interval: 2 sqrt(3) (2 - (3/5)^(1/4)) = 3.879407.
        double root = Math.sqrt(3);
        MonteCarlo result = MonteCarlo.run(
                MonteCarloTest::sum, Collections.nCopies(4, new Distribution.Rectangular(-root, root)), TRIALS, SEED);
        assertClose(2, result.standardUncertainty(), 0.003);
        assertEquals(3.879407, result.symmetricInterval(0.95).upper(), 0.012);
        assertEquals(-3.879407, result.symmetricInterval(0.95).lower(), 0.012);
    }

    @Test
    void oneRectangularDominates() {
        // JCGM 101 9.2.4: u = sqrt(103), interval +-17.0, not the +-19.9 of a normal distribution.
        double root = Math.sqrt(3);
        Distribution narrow = new Distribution.Rectangular(-root, root);
        MonteCarlo result = MonteCarlo.run(
                MonteCarloTest::sum,
                List.of(narrow, narrow, narrow, new Distribution.Rectangular(-10 * root, 10 * root)),
                TRIALS,
                SEED);
        assertClose(Math.sqrt(103), result.standardUncertainty(), 0.003);
        assertEquals(17.01, result.symmetricInterval(0.95).upper(), 0.03);
        assertEquals(-17.01, result.symmetricInterval(0.95).lower(), 0.03);
    }

    @Test
    void massCalibration() {
        // JCGM 101 9.3: deviation of the conventional mass from 100 g, in mg.
        MonteCarlo result = MonteCarlo.run(
                x -> (x[0] + x[1]) * (1 + (x[2] - 1.2) * (1 / x[3] - 1 / x[4])) - 100_000,
                List.of(
                        new Distribution.Normal(100_000, 0.050),
                        new Distribution.Normal(1.234, 0.020),
                        new Distribution.Rectangular(1.10, 1.30),
                        new Distribution.Rectangular(7000, 9000),
                        new Distribution.Rectangular(7950, 8050)),
                TRIALS,
                SEED);
        assertEquals(1.2341, result.mean(), 0.0003);
        assertEquals(0.0754, result.standardUncertainty(), 0.0002);
        assertEquals(1.0834, result.shortestInterval(0.95).lower(), 0.002);
        assertEquals(1.3825, result.shortestInterval(0.95).upper(), 0.002);
    }

    // JCGM 101 9.4, values in 1e-6: mean x1² + 2u², variance 4u²x1² + 4u⁴; shortest intervals as printed there
    // (at x1 = 0 the distribution is exponential: upper end -50 ln 0.05 = 149.787).
    @ParameterizedTest
    @CsvSource({
        "0, 50, 50, 0, 149.787, 0.6",
        "0.010, 150, 111.8034, 0, 367, 2.5",
        "0.050, 2550, 502.4938, 1590, 3543, 15"
    })
    void comparisonLossNearZero(
            double x1, double mean, double deviation, double lower, double upper, double tolerance) {
        MonteCarlo result = MonteCarlo.run(
                x -> (x[0] * x[0] + x[1] * x[1]) * 1e6,
                List.of(new Distribution.Normal(x1, 0.005), new Distribution.Normal(0, 0.005)),
                TRIALS,
                SEED);
        assertClose(mean, result.mean(), 0.004);
        assertClose(deviation, result.standardUncertainty(), 0.004);
        assertEquals(lower, result.shortestInterval(0.95).lower(), tolerance);
        assertEquals(upper, result.shortestInterval(0.95).upper(), tolerance);
    }

    @Test
    void endGaugeOfTheGumIncludesSecondOrder() {
        // GUM H.1.7: with the second-order terms u(l) is 34 nm instead of the first-order 32 nm.
        // (31.66² + 11.7² + 1.7²)^(1/2) = 33.8.
        MonteCarlo result = MonteCarlo.run(
                x -> x[0] + x[1] - x[0] * (x[2] * x[3] + x[4] * x[5]) - 50_000_838,
                List.of(
                        new Distribution.Normal(50_000_623, 25),
                        new Distribution.Normal(215, 9.68),
                        new Distribution.Rectangular(-1e-6, 1e-6),
                        // theta = -0.1 +- 0.2 degree (read) with a cyclic swing of 0.5 degree: u = 0.41.
                        new Distribution.Normal(-0.1, 0.41),
                        new Distribution.Rectangular(11.5e-6 - 2e-6, 11.5e-6 + 2e-6),
                        new Distribution.Rectangular(-0.05, 0.05)),
                TRIALS,
                SEED);
        assertEquals(33.8, result.standardUncertainty(), 0.15);
        assertEquals(0, result.mean(), 0.2);
    }

    @Test
    void jointNormalInputsKeepTheirCorrelation() {
        // var(a - b) = 9 + 4 - 2 x 0.5 x 3 x 2 = 7; the third input has no uncertainty.
        Covariance covariance = Covariance.of(new double[][] {{9, 3, 0}, {3, 4, 0}, {0, 0, 0}});
        MonteCarlo result = MonteCarlo.run(x -> x[0] - x[1] + x[2], new double[] {1, 2, 10}, covariance, 200_000, SEED);
        assertEquals(9, result.mean(), 0.03);
        assertClose(Math.sqrt(7), result.standardUncertainty(), 0.006);
        MonteCarlo certain =
                MonteCarlo.run(x -> x[0] + x[1], new double[] {1, 2}, Covariance.uncorrelated(0, 0), 100, SEED);
        assertEquals(3, certain.mean());
        assertEquals(0, certain.standardUncertainty());
        assertEquals(0, certain.shortestInterval(0.9).width());
    }

    @Test
    void distributionsHaveTheirClosedFormVariance() {
        // a²/6 triangular, a²/2 arcsine, nu/(nu - 2) Student; 97.5 % point of t(6) is 2.4469.
        assertClose(
                Math.sqrt(1 / 6.0), single(new Distribution.Triangular(-1, 1)).standardUncertainty(), 0.005);
        assertClose(Math.sqrt(0.5), single(new Distribution.Arcsine(-1, 1)).standardUncertainty(), 0.005);
        MonteCarlo student = single(new Distribution.ScaledStudent(new Estimate(5, 2, 6)));
        assertClose(2 * Math.sqrt(6 / 4.0), student.standardUncertainty(), 0.01);
        assertEquals(5 + 2 * 2.4469, student.symmetricInterval(0.95).upper(), 0.05);
    }

    @Test
    void fractionAtLeastIsTheTailProbability() {
        // Phi(1) = 0.8413447.
        assertEquals(0.8413447, single(new Distribution.Normal(1, 1)).fractionAtLeast(0), 0.003);
        assertEquals(1, single(new Distribution.Rectangular(1, 2)).fractionAtLeast(0.5));
        assertEquals(0, single(new Distribution.Rectangular(1, 2)).fractionAtLeast(2.5));
    }

    @Test
    void sameSeedGivesTheSameNumbers() {
        assertEquals(
                single(new Distribution.Normal(0, 1)).standardUncertainty(),
                single(new Distribution.Normal(0, 1)).standardUncertainty());
    }

    @Test
    void rejectsTooFewTrialsAndUndefinedResults() {
        List<Distribution> inputs = List.of(new Distribution.Normal(0, 1));
        assertThrows(IllegalArgumentException.class, () -> MonteCarlo.run(x -> x[0], inputs, 99, SEED));
        assertThrows(IllegalArgumentException.class, () -> MonteCarlo.run(x -> Math.log(x[0]), inputs, 1000, SEED));
        assertThrows(IllegalArgumentException.class, () -> new Distribution.Rectangular(2, 1));
        assertThrows(IllegalArgumentException.class, () -> new Distribution.ScaledStudent(Estimate.of(1, 1)));
    }

    private static MonteCarlo single(Distribution distribution) {
        return MonteCarlo.run(x -> x[0], List.of(distribution), 200_000, SEED);
    }
}
