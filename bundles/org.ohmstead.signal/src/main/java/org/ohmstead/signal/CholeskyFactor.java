// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/** The factor U of a small symmetric positive definite matrix U^T U, for the normal equations of a fit. */
final class CholeskyFactor {
    private final double[][] upper;

    /**
     * Factors a matrix, of which only the upper triangle is read.
     *
     * @throws ArithmeticException if it is not positive definite, that is, if the unknowns cannot be told apart
     */
    CholeskyFactor(double[][] matrix) {
        int size = matrix.length;
        upper = new double[size][];
        for (int i = 0; i < size; i++) {
            upper[i] = matrix[i].clone();
        }
        // Row by row, so that the inner loop runs along rows and has no sum to wait for.
        for (int k = 0; k < size; k++) {
            double[] row = upper[k];
            if (!(row[k] > 1e-13 * matrix[k][k])) {
                throw new ArithmeticException("unknown " + k + " of " + size + " depends on the ones before it");
            }
            double root = Math.sqrt(row[k]);
            for (int j = k; j < size; j++) {
                row[j] /= root;
            }
            for (int i = k + 1; i < size; i++) {
                subtract(upper[i], row, row[i], i);
            }
        }
    }

    /** Takes a multiple of one row off another, from an element on. */
    private static void subtract(double[] target, double[] row, double factor, int from) {
        for (int j = from; j < target.length; j++) {
            target[j] -= factor * row[j];
        }
    }

    double[] solve(double[] rightSide) {
        int size = upper.length;
        double[] x = rightSide.clone();
        for (int k = 0; k < size; k++) {
            x[k] /= upper[k][k];
            subtract(x, upper[k], x[k], k + 1);
        }
        for (int i = size - 1; i >= 0; i--) {
            double sum = x[i];
            for (int k = i + 1; k < size; k++) {
                sum -= upper[i][k] * x[k];
            }
            x[i] = sum / upper[i][i];
        }
        return x;
    }
}
