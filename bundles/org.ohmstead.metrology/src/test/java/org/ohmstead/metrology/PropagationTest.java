// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.ohmstead.metrology.Tolerances.REL_1PPM;
import static org.ohmstead.metrology.Tolerances.assertClose;

import org.junit.jupiter.api.Test;

class PropagationTest {

    // GUM H.2, table H.2: five sets of simultaneous readings.
    private static final double[] VOLTS = {5.007, 4.994, 5.005, 4.990, 4.999};
    private static final double[] AMPERES = {19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3};
    private static final double[] RADIANS = {1.0456, 1.0438, 1.0468, 1.0428, 1.0433};

    private static double[] impedance(double[] x) {
        double z = x[0] / x[1];
        return new double[] {z * Math.cos(x[2]), z * Math.sin(x[2]), z};
    }

    @Test
    void resistanceAndReactanceOfTheGumFromTheMeans() {
        Covariance inputs = Covariance.ofMeans(VOLTS, AMPERES, RADIANS);
        assertClose(0.0032093613, inputs.standardUncertainty(0), REL_1PPM);
        assertClose(9.471008e-6, inputs.standardUncertainty(1), REL_1PPM);
        assertClose(7.520638e-4, inputs.standardUncertainty(2), REL_1PPM);
        assertEquals(-0.355311, inputs.correlation(0, 1), REL_1PPM);
        assertEquals(0.857624, inputs.correlation(0, 2), REL_1PPM);
        assertEquals(-0.645111, inputs.correlation(1, 2), REL_1PPM);

        double[] means = {4.9990, 0.0196610, 1.04446};
        Propagation result = Propagation.numeric(PropagationTest::impedance, means, inputs);
        // Unrounded values; the GUM prints 127.732, 219.847, 254.260 with .071, .295, .236 and -.588, -.485, .993.
        assertClose(127.732170, result.values()[0], 1e-8);
        assertClose(219.846512, result.values()[1], 1e-8);
        assertClose(254.259702, result.values()[2], 1e-8);
        assertClose(0.0710714, result.estimate(0).standardUncertainty(), REL_1PPM);
        assertClose(0.2955817, result.estimate(1).standardUncertainty(), REL_1PPM);
        assertClose(0.2363361, result.estimate(2).standardUncertainty(), REL_1PPM);
        assertEquals(-0.588430, result.covariance().correlation(0, 1), REL_1PPM);
        assertEquals(-0.485259, result.covariance().correlation(0, 2), REL_1PPM);
        assertEquals(0.992512, result.covariance().correlation(1, 2), REL_1PPM);
    }

    @Test
    void resistanceAndReactanceOfTheGumRowByRow() {
        // GUM H.2.4, approach 2: each set of readings gives its own R, X, Z.
        double[][] outputs = new double[3][VOLTS.length];
        for (int k = 0; k < VOLTS.length; k++) {
            double[] row = impedance(new double[] {VOLTS[k], AMPERES[k], RADIANS[k]});
            for (int i = 0; i < row.length; i++) {
                outputs[i][k] = row[i];
            }
        }
        double[] values = {127.731630, 219.846895, 254.260050};
        double[] uncertainties = {0.0712735, 0.2954891, 0.2362475};
        for (int i = 0; i < values.length; i++) {
            Estimate estimate = Estimate.fromReadings(outputs[i]);
            assertClose(values[i], estimate.value(), 1e-8);
            assertClose(uncertainties[i], estimate.standardUncertainty(), 2e-6);
        }
        assertEquals(-0.588, Covariance.ofMeans(outputs).correlation(0, 1), 0.0015);
    }

    @Test
    void ignoringCorrelationsGivesAnotherAnswer() {
        Covariance inputs = Covariance.uncorrelated(0.0032093613, 9.471008e-6, 7.520638e-4);
        Propagation result =
                Propagation.numeric(PropagationTest::impedance, new double[] {4.9990, 0.0196610, 1.04446}, inputs);
        assertEquals(0.1945, result.estimate(0).standardUncertainty(), 0.00005);
        assertEquals(0.2009, result.estimate(1).standardUncertainty(), 0.00005);
        assertEquals(0.2041, result.estimate(2).standardUncertainty(), 0.00005);
    }

    @Test
    void givenAndNumericSensitivitiesAgree() {
        Covariance inputs = Covariance.uncorrelated(0.0750555, 0.0230940);
        Propagation numeric = Propagation.numericScalar(x -> x[0] * x[0] / x[1], new double[] {20, 4}, inputs);
        Propagation given = Propagation.withSensitivities(new double[] {100}, new double[][] {{10, -25}}, inputs);
        assertClose(10, numeric.sensitivity(0, 0), 1e-9);
        assertClose(-25, numeric.sensitivity(0, 1), 1e-9);
        assertClose(0.9469248, given.estimate(0).standardUncertainty(), REL_1PPM);
        assertClose(given.estimate(0).standardUncertainty(), numeric.estimate(0).standardUncertainty(), 1e-9);
        assertEquals(9, given.estimate(0, 9).degreesOfFreedom());
    }

    @Test
    void numericSensitivityCopesWithInputsWithoutUncertainty() {
        Propagation result = Propagation.numericScalar(
                x -> Math.exp(x[0]) + 3 * x[1], new double[] {0, 1000}, Covariance.uncorrelated(0, 0));
        assertClose(1, result.sensitivity(0, 0), REL_1PPM);
        assertClose(3, result.sensitivity(0, 1), REL_1PPM);
        assertEquals(0, result.estimate(0).standardUncertainty());
    }

    @Test
    void rejectsMismatchedSizesAndImpossibleMatrices() {
        Covariance two = Covariance.uncorrelated(1, 1);
        assertThrows(IllegalArgumentException.class, () -> Propagation.numericScalar(x -> x[0], new double[] {1}, two));
        assertThrows(IllegalArgumentException.class, () -> Covariance.of(new double[][] {{1, 2}, {2, 1}}));
        assertThrows(IllegalArgumentException.class, () -> Covariance.of(new double[][] {{1, 0.5}, {0.1, 1}}));
        assertThrows(IllegalArgumentException.class, () -> Covariance.of(new double[][] {{-1}}));
        assertThrows(
                IllegalArgumentException.class,
                () -> Propagation.numericScalar(x -> Math.log(x[0]), new double[] {0, 1}, two));
    }
}
