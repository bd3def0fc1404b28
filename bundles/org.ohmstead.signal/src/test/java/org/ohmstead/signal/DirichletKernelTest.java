// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class DirichletKernelTest {
    private static final double REL_OF_LARGEST = 1e-10;

    /** Sums over the centred instants of the window times cos, -t sin and -t^2 cos, term by term. */
    private static double[] termByTerm(double[] weights, double theta) {
        double[] sums = new double[3];
        double middle = 0.5 * (weights.length - 1);
        for (int i = 0; i < weights.length; i++) {
            double t = i - middle;
            sums[0] += weights[i] * Math.cos(theta * t);
            sums[1] -= weights[i] * t * Math.sin(theta * t);
            sums[2] -= weights[i] * t * t * Math.cos(theta * t);
        }
        return sums;
    }

    @ParameterizedTest
    @EnumSource(Window.class)
    void agreesWithTheSumTermByTerm(Window window) {
        for (int size : new int[] {16, 101, 1454}) {
            double[] weights = window.centredWeights(size);
            for (double binsFromZero :
                    new double[] {0, 1e-4, 0.002, 0.0031, 0.0033, 0.01, 0.5, 1, 1.7, 3, 4.4, size / 3.0, size / 2.0}) {
                double theta = 2 * Math.PI * binsFromZero / size;
                double[] expected = termByTerm(weights, theta);
                double[] actual = new double[3];
                window.centredKernels(size, theta, actual);
                String at = window + " of " + size + " at bin " + binsFromZero;
                assertEquals(expected[0], actual[0], REL_OF_LARGEST * size, at);
                assertEquals(expected[1], actual[1], REL_OF_LARGEST * size * size, at);
                assertEquals(expected[2], actual[2], REL_OF_LARGEST * size * size * size, at);
                assertEquals(expected[0], window.centredKernel(size, theta), REL_OF_LARGEST * size, at);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"100, 1", "101, 1", "100, 2", "100, -1", "101, -3"})
    void changesItsSignOverAFullTurnOnlyForAnEvenNumber(int size, int turns) {
        double sign = size % 2 == 0 && turns % 2 != 0 ? -1 : 1;
        double[] plain = new double[3];
        double[] turned = new double[3];
        DirichletKernel.add(size, 0.3, 1, plain);
        DirichletKernel.add(size, 0.3 + 2 * Math.PI * turns, 1, turned);
        for (int i = 0; i < 3; i++) {
            assertEquals(sign * plain[i], turned[i], REL_OF_LARGEST * Math.pow(size, i + 1));
        }
    }
}
