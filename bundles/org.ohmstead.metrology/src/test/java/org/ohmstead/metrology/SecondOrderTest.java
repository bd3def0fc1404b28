// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.ohmstead.metrology.Tolerances.assertClose;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SecondOrderTest {

    @Test
    void endGaugeOfTheGum() {
        // GUM H.1.7: the two second-order terms are 11.7 nm and 1.7 nm, u(l) = 34 nm instead of 32 nm.
        double alpha = 1.2e-6;
        SecondOrder result = SecondOrder.of(
                x -> x[0] + x[1] - x[0] * (x[2] * x[3] + x[4] * x[5]),
                new double[] {50_000_623, 215, 0, -0.1, 11.5e-6, 0},
                new double[] {25, 9.68, 0.58e-6, 0.41, alpha, 0.029});
        assertEquals(11.7, result.interaction(2, 3), 0.2);
        assertEquals(1.7, result.interaction(4, 5), 0.05);
        assertEquals(31.7, result.firstOrder().standardUncertainty(), 0.1);
        assertEquals(34, result.secondOrder().standardUncertainty(), 0.5);
        assertEquals(50_000_838, result.secondOrder().value(), 0.5);
    }

    @Test
    void massCalibrationOfTheSupplement() {
        // JCGM 101 9.3: 0.0539 mg to first order, 0.0750 mg with the higher-order terms.
        SecondOrder result = SecondOrder.of(
                x -> (x[0] + x[1]) * (1 + (x[2] - 1.2) * (1 / x[3] - 1 / x[4])) - 100_000,
                new double[] {100_000, 1.234, 1.2, 8000, 8000},
                new double[] {0.050, 0.020, 0.1 / Math.sqrt(3), 1000 / Math.sqrt(3), 50 / Math.sqrt(3)});
        assertEquals(1.2340, result.firstOrder().value(), 0.00005);
        assertEquals(0.0539, result.firstOrder().standardUncertainty(), 0.00005);
        assertEquals(0.0750, result.secondOrder().standardUncertainty(), 0.00015);
    }

    // JCGM 101 9.4: mean x1² + 2u², variance 4u²x1² + 4u⁴ exactly, as the model has no terms of higher order.
    @ParameterizedTest
    @CsvSource({"0, 0.00005, 0.00005", "0.010, 0.00015, 0.0001118033989", "0.050, 0.00255, 0.0005024937811"})
    void comparisonLossIsExact(double x1, double mean, double deviation) {
        SecondOrder result =
                SecondOrder.of(x -> x[0] * x[0] + x[1] * x[1], new double[] {x1, 0}, new double[] {0.005, 0.005});
        assertClose(mean, result.secondOrder().value(), 1e-9);
        assertClose(deviation, result.secondOrder().standardUncertainty(), 1e-9);
        assertClose(5e-5, result.bias(), 1e-9);
    }

    @Test
    void cubicTermCountsOnceToThisOrder() {
        // y = x³ at x = 2, u = 0.1: first (3x²u)² = 1.44, then (6x)²u⁴/2 + 3x² 6 u⁴ = 0.0072 + 0.0072.
        SecondOrder result = SecondOrder.of(x -> x[0] * x[0] * x[0], new double[] {2}, new double[] {0.1});
        assertClose(1.2, result.firstOrder().standardUncertainty(), 1e-9);
        assertClose(Math.sqrt(1.44 + 0.0072 + 0.0072), result.secondOrder().standardUncertainty(), 1e-9);
        assertClose(0.06, result.bias(), 1e-9);
    }

    @Test
    void rejectsWhatCannotBePropagated() {
        assertThrows(
                IllegalArgumentException.class, () -> SecondOrder.of(x -> x[0], new double[] {1, 2}, new double[] {1}));
        assertThrows(
                IllegalArgumentException.class,
                () -> SecondOrder.of(x -> Math.log(x[0]), new double[] {0}, new double[] {1}));
        SecondOrder certain = SecondOrder.of(x -> x[0], new double[] {5}, new double[] {0});
        assertEquals(0, certain.secondOrder().standardUncertainty());
        assertThrows(IllegalArgumentException.class, () -> certain.interaction(0, 0));
    }
}
