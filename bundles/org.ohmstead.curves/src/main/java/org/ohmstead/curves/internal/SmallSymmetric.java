// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.internal;

import java.util.Arrays;

/** Symmetric matrices of a few rows, positive definite or nearly so. */
public final class SmallSymmetric {
    private static final double SINGULAR = 1e-13;
    private static final double DIAGONAL = 1e-15;
    private static final int SWEEPS = 30;

    private SmallSymmetric() {}

    /**
     * Solves (A + damping diag A) x = b by Cholesky's method on the matrix scaled to a unit diagonal.
     *
     * @param matrix A; only its lower triangle of the first {@code size} rows is read
     * @param right b
     * @param size number of rows
     * @param damping at least 0
     * @param factor working room, at least size by size
     * @param solution filled with x
     * @return false if the matrix is singular
     */
    public static boolean solve(
            double[][] matrix, double[] right, int size, double damping, double[][] factor, double[] solution) {
        if (!factorize(matrix, size, damping, factor)) {
            return false;
        }
        for (int i = 0; i < size; i++) {
            double sum = right[i] / Math.sqrt(matrix[i][i]);
            for (int k = 0; k < i; k++) {
                sum -= factor[i][k] * solution[k];
            }
            solution[i] = sum / factor[i][i];
        }
        for (int i = size - 1; i >= 0; i--) {
            double sum = solution[i];
            for (int k = i + 1; k < size; k++) {
                sum -= factor[k][i] * solution[k];
            }
            solution[i] = sum / factor[i][i];
        }
        for (int i = 0; i < size; i++) {
            solution[i] /= Math.sqrt(matrix[i][i]);
        }
        return true;
    }

    private static boolean factorize(double[][] matrix, int size, double damping, double[][] factor) {
        for (int i = 0; i < size; i++) {
            if (!(matrix[i][i] > 0)) {
                return false;
            }
            double scale = Math.sqrt(matrix[i][i]);
            for (int j = 0; j <= i; j++) {
                double sum = i == j ? 1 + damping : matrix[i][j] / (scale * Math.sqrt(matrix[j][j]));
                for (int k = 0; k < j; k++) {
                    sum -= factor[i][k] * factor[j][k];
                }
                if (i == j && !(sum > SINGULAR)) {
                    return false;
                }
                factor[i][j] = i == j ? Math.sqrt(sum) : sum / factor[j][j];
            }
        }
        return true;
    }

    /**
     * Returns the inverse, or an empty array if the matrix is singular.
     *
     * @param matrix its lower triangle is read
     * @param size number of rows
     */
    public static double[][] inverse(double[][] matrix, int size) {
        double[][] inverse = new double[size][size];
        double[][] factor = new double[size][size];
        double[] unit = new double[size];
        double[] column = new double[size];
        for (int j = 0; j < size; j++) {
            Arrays.fill(unit, 0);
            unit[j] = 1;
            if (!solve(matrix, unit, size, 0, factor, column)) {
                return new double[0][];
            }
            for (int i = 0; i < size; i++) {
                inverse[i][j] = column[i];
            }
        }
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < i; j++) {
                double mean = (inverse[i][j] + inverse[j][i]) / 2;
                inverse[i][j] = mean;
                inverse[j][i] = mean;
            }
        }
        return inverse;
    }

    /**
     * Returns the condition number of the matrix square root after scaling to a unit diagonal: of a normal matrix it is
     * that of the Jacobian with columns of equal length. Infinite when singular. By Jacobi rotations.
     *
     * @param matrix its lower triangle is read
     * @param size number of rows
     */
    public static double scaledCondition(double[][] matrix, int size) {
        double[][] a = new double[size][size];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j <= i; j++) {
                double scale = Math.sqrt(matrix[i][i] * matrix[j][j]);
                if (!(scale > 0)) {
                    return Double.POSITIVE_INFINITY;
                }
                a[i][j] = matrix[i][j] / scale;
                a[j][i] = a[i][j];
            }
        }
        for (int sweep = 0; sweep < SWEEPS && !diagonal(a); sweep++) {
            for (int p = 0; p < size; p++) {
                for (int q = p + 1; q < size; q++) {
                    rotate(a, p, q);
                }
            }
        }
        double smallest = Double.POSITIVE_INFINITY;
        double largest = 0;
        for (int i = 0; i < size; i++) {
            smallest = Math.min(smallest, a[i][i]);
            largest = Math.max(largest, a[i][i]);
        }
        return smallest > SINGULAR ? Math.sqrt(largest / smallest) : Double.POSITIVE_INFINITY;
    }

    private static boolean diagonal(double[][] a) {
        double off = 0;
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < i; j++) {
                off = Math.max(off, Math.abs(a[i][j]));
            }
        }
        return off < DIAGONAL;
    }

    private static void rotate(double[][] a, int p, int q) {
        if (Math.abs(a[p][q]) < Double.MIN_NORMAL) {
            return;
        }
        double theta = (a[q][q] - a[p][p]) / (2 * a[p][q]);
        double t = Math.copySign(1, theta) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
        double c = 1 / Math.sqrt(t * t + 1);
        double s = t * c;
        for (int k = 0; k < a.length; k++) {
            double left = a[k][p];
            double right = a[k][q];
            a[k][p] = c * left - s * right;
            a[k][q] = s * left + c * right;
        }
        for (int k = 0; k < a.length; k++) {
            double upper = a[p][k];
            double lower = a[q][k];
            a[p][k] = c * upper - s * lower;
            a[q][k] = s * upper + c * lower;
        }
    }
}
