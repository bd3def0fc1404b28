// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.metrology.CovarianceBasis;
import org.ohmstead.metrology.FitException;
import org.ohmstead.metrology.FitResult;
import org.ohmstead.metrology.NonlinearFit;
import org.ohmstead.metrology.Observation;

class StageSolverTest {
    private static final double REL_DIFFERENCES = 1e-7;
    private static final double REL_SAME = 1e-9;
    private static final int[] STRAIGHT = {StageCurve.GAIN, StageCurve.SATURATION, StageCurve.OUTPUT};

    @ParameterizedTest
    @CsvSource({
        // supply, load, progress, knee, limit: below and above a knee, limited, warmed up
        "11.5, 4, 0, Infinity, Infinity",
        "14.4, 2, 0, 13, Infinity",
        "12.0, 2, 3, 13, Infinity",
        "14.4, 1, 0, Infinity, 20",
        "13.8, 4, 7, Infinity, Infinity",
        "13.8, 4, 7, 12.5, 30"
    })
    void derivativesAgreeWithCentralDifferences(
            double supplyVolts, double channelOhms, double progress, double kneeVolts, double limitAmps) {
        double[] slots = {2.8, 3, 0.1, kneeVolts, limitAmps, 0.01};
        double[] gradient = new double[StageCurve.SLOTS];
        double[] unused = new double[StageCurve.SLOTS];
        StageCurve.peakVolts(slots, supplyVolts, channelOhms, progress, gradient);
        boolean any = false;
        for (int slot = 0; slot < StageCurve.SLOTS; slot++) {
            if (Double.isInfinite(slots[slot])) {
                assertEquals(0, gradient[slot]);
                continue;
            }
            double step = 1e-5 * Math.max(1, Math.abs(slots[slot]));
            double[] up = slots.clone();
            double[] down = slots.clone();
            up[slot] += step;
            down[slot] -= step;
            double difference = (StageCurve.peakVolts(up, supplyVolts, channelOhms, progress, unused)
                            - StageCurve.peakVolts(down, supplyVolts, channelOhms, progress, unused))
                    / (2 * step);
            assertEquals(
                    difference, gradient[slot], REL_DIFFERENCES * Math.max(1, Math.abs(difference)), "slot " + slot);
            any |= gradient[slot] != 0;
        }
        assertTrue(any);
    }

    private static StageData sixty() {
        double[] volts = new double[60];
        double[] ohms = new double[60];
        double[] channels = new double[60];
        double[] watts = new double[60];
        double[] errors = new double[60];
        double[] loads = {8, 4, 2, 2};
        for (int k = 0; k < 60; k++) {
            volts[k] = 11 + 0.25 * (k / 4);
            ohms[k] = loads[k % 4];
            channels[k] = k % 4 == 3 ? 2 : 1;
            double peak = (2.8 * volts[k] - 3) * ohms[k] / (ohms[k] + 0.1);
            double exact = channels[k] * peak * peak / (2 * ohms[k]);
            watts[k] = exact * (1 + 0.006 * Math.sin(12.9898 * k + 0.5));
            errors[k] = 0.005 * exact;
        }
        return new StageData(volts, ohms, channels, watts, errors, new double[60]);
    }

    private static double[] filled(double value, int size) {
        double[] filled = new double[size];
        Arrays.fill(filled, value);
        return filled;
    }

    private static StageSolver solver(StageData data, int[] free, double[] lower, double[] upper) {
        return new StageSolver(data, free, lower, upper);
    }

    @Test
    void agreesWithTheGeneralFit() throws FitException {
        StageData data = sixty();
        List<Observation> observations = new ArrayList<>();
        for (int k = 0; k < 60; k++) {
            double[] conditions = {data.supplyVolts()[k], data.channelOhms()[k], data.channels()[k]};
            observations.add(Observation.of(conditions, data.powerWatts()[k], data.standardUncertaintyWatts()[k]));
        }
        FitResult general = NonlinearFit.of(new OutputStageModel(), 2.5, 2, 0.05)
                .withBasis(CovarianceBasis.GIVEN_UNCERTAINTIES)
                .fit(observations);
        double[] lower = filled(Double.NEGATIVE_INFINITY, StageCurve.SLOTS);
        double[] upper = filled(Double.POSITIVE_INFINITY, StageCurve.SLOTS);
        // The second search has a droop as well that cannot move: it takes the general way through the sums.
        double[] start = {2.5, 2, 0.05, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, 0};
        int[] withDroop = {StageCurve.GAIN, StageCurve.SATURATION, StageCurve.OUTPUT, StageCurve.DROOP};
        for (int[] free : List.of(STRAIGHT, withDroop)) {
            StageSolution solution = solver(data, free, lower, upper).solve(start, filled(1, 60));
            assertTrue(solution.converged());
            for (int j = 0; j < 3; j++) {
                assertEquals(general.parameter(j), solution.slots()[j], REL_SAME * Math.abs(general.parameter(j)));
            }
            assertEquals(general.rss(), solution.chiSquared(), REL_SAME * general.rss());
            if (free.length == 3) {
                for (int i = 0; i < 3; i++) {
                    for (int j = 0; j < 3; j++) {
                        double expected = general.covariance().get(i, j);
                        assertEquals(expected, solution.covariance()[i][j], 1e-7 * Math.abs(expected));
                    }
                }
            }
        }
    }

    @Test
    void aBoundThatHoldsGivesTheFitWithThatValueFixed() {
        StageData data = sixty();
        double[] lower = filled(Double.NEGATIVE_INFINITY, StageCurve.SLOTS);
        double[] upper = filled(Double.POSITIVE_INFINITY, StageCurve.SLOTS);
        upper[StageCurve.SATURATION] = 1;
        double[] start = StageCurve.neutral();
        start[StageCurve.GAIN] = 2;
        start[StageCurve.SATURATION] = 1;
        StageSolution bounded = solver(data, STRAIGHT, lower, upper).solve(start, filled(1, 60));
        StageSolution fixed = solver(data, new int[] {StageCurve.GAIN, StageCurve.OUTPUT}, lower, upper)
                .solve(start, filled(1, 60));
        assertTrue(bounded.converged());
        assertTrue(bounded.atBound()[1]);
        assertFalse(bounded.atBound()[0]);
        assertEquals(1, bounded.slots()[StageCurve.SATURATION]);
        assertArrayEquals(fixed.slots(), bounded.slots(), 1e-8);
        assertEquals(0, bounded.covariance()[1][1]);
        assertEquals(fixed.covariance()[0][0], bounded.covariance()[0][0], REL_SAME);
    }

    @Test
    void saysWhenTheReadingsDoNotDetermineTheValues() {
        // One load alone: gain, loss and source resistance cannot be told apart.
        StageData one = new StageData(
                new double[] {11, 12, 13, 14},
                filled(4, 4),
                filled(1, 4),
                new double[] {91.95, 111.4, 132.7, 155.9},
                filled(0.5, 4),
                new double[4]);
        StageSolution solution = solver(
                        one,
                        STRAIGHT,
                        filled(Double.NEGATIVE_INFINITY, StageCurve.SLOTS),
                        filled(Double.POSITIVE_INFINITY, StageCurve.SLOTS))
                .solve(new StageStarts(one, STRAIGHT).through(index -> true), filled(1, 4));
        assertFalse(solution.usable());
    }

    @Test
    void conditionOfScaledMatrixHasItsClosedForm() {
        // [[1, r], [r, 1]] has eigenvalues 1 +- r; scaling of rows and columns must not matter.
        double r = 0.98;
        double[][] matrix = {{4, 0}, {2 * 300 * r, 90_000}};
        assertEquals(Math.sqrt((1 + r) / (1 - r)), SmallSymmetric.scaledCondition(matrix, 2), 1e-9);
        assertEquals(Double.POSITIVE_INFINITY, SmallSymmetric.scaledCondition(new double[][] {{1, 0}, {1, 1}}, 2));
        double[][] inverse = SmallSymmetric.inverse(new double[][] {{4, 0}, {2, 3}}, 2);
        // Closed form: 1/(4 x 3 - 2 x 2) [[3, -2], [-2, 4]].
        assertArrayEquals(new double[] {0.375, -0.25}, inverse[0], 1e-15);
        assertArrayEquals(new double[] {-0.25, 0.5}, inverse[1], 1e-15);
    }
}
