// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.internal;

import java.util.Arrays;
import java.util.OptionalInt;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * Linear least squares by Householder QR of a matrix whose columns were scaled to length 1 (so that the units of the
 * parameters do not matter). Rows are already weighted.
 */
public final class LeastSquaresAlgebra {

    /**
     * A column whose part that is independent of the earlier ones is smaller than this says nothing in double
     * precision.
     */
    private static final double SMALLEST_PIVOT = 1e-14;

    private static final int REFINEMENTS = 3;

    private final double[][] rows;
    private final double[] lengths;
    private final QRDecomposition decomposition;
    private final OptionalInt dependentColumn;

    /** Decomposes a matrix with at least as many rows as columns. */
    public LeastSquaresAlgebra(double[][] rows) {
        this.rows = rows;
        int columns = rows[0].length;
        lengths = new double[columns];
        for (double[] row : rows) {
            for (int j = 0; j < columns; j++) {
                lengths[j] = Math.hypot(lengths[j], row[j]);
            }
        }
        RealMatrix scaled = MatrixUtils.createRealMatrix(rows.length, columns);
        for (int i = 0; i < rows.length; i++) {
            for (int j = 0; j < columns; j++) {
                scaled.setEntry(i, j, lengths[j] > 0 ? rows[i][j] / lengths[j] : 0);
            }
        }
        decomposition = new QRDecomposition(scaled, 0);
        dependentColumn = findDependentColumn(columns);
    }

    /** Returns the first column that is zero or a combination of earlier ones, if there is one. */
    public OptionalInt dependentColumn() {
        return dependentColumn;
    }

    /**
     * Returns the solution that makes the sum of squares smallest. Its rounding error is then removed by refinement:
     * residuals are formed with twice the digits and their own solution is added.
     */
    public double[] solve(double[] rightSide) {
        double[] solution = solveOnce(rightSide);
        for (int k = 0; k < REFINEMENTS; k++) {
            double[] correction = solveOnce(residuals(solution, rightSide));
            for (int j = 0; j < solution.length; j++) {
                solution[j] += correction[j];
            }
        }
        return solution;
    }

    /** Returns right side minus matrix times solution, each formed with twice the digits of a double. */
    public double[] residuals(double[] solution, double[] rightSide) {
        double[] residuals = new double[rows.length];
        for (int i = 0; i < rows.length; i++) {
            double sum = rightSide[i];
            double lost = 0;
            for (int j = 0; j < solution.length; j++) {
                double product = -rows[i][j] * solution[j];
                double productError = Math.fma(-rows[i][j], solution[j], -product);
                double next = sum + product;
                double shift = next - sum;
                lost += (sum - (next - shift)) + (product - shift) + productError;
                sum = next;
            }
            residuals[i] = sum + lost;
        }
        return residuals;
    }

    /** Returns the inverse of (matrix transposed times matrix). */
    public double[][] inverseNormalMatrix() {
        int columns = lengths.length;
        double[][] inverse = inverseTriangle(columns);
        double[][] result = new double[columns][columns];
        for (int i = 0; i < columns; i++) {
            for (int j = 0; j < columns; j++) {
                double sum = 0;
                for (int k = Math.max(i, j); k < columns; k++) {
                    sum += inverse[i][k] * inverse[j][k];
                }
                result[i][j] = sum / lengths[i] / lengths[j];
            }
        }
        return result;
    }

    private double[] solveOnce(double[] rightSide) {
        double[] solution = decomposition
                .getSolver()
                .solve(new ArrayRealVector(rightSide, false))
                .toArray();
        for (int j = 0; j < solution.length; j++) {
            solution[j] /= lengths[j];
        }
        return solution;
    }

    private double[][] inverseTriangle(int columns) {
        RealMatrix r = decomposition.getR();
        double[][] inverse = new double[columns][columns];
        for (int j = 0; j < columns; j++) {
            inverse[j][j] = 1 / r.getEntry(j, j);
            for (int i = j - 1; i >= 0; i--) {
                double sum = 0;
                for (int k = i + 1; k <= j; k++) {
                    sum += r.getEntry(i, k) * inverse[k][j];
                }
                inverse[i][j] = -sum / r.getEntry(i, i);
            }
        }
        return inverse;
    }

    private OptionalInt findDependentColumn(int columns) {
        RealMatrix r = decomposition.getR();
        double[] diagonal = new double[columns];
        Arrays.setAll(diagonal, j -> Math.abs(r.getEntry(j, j)));
        for (int j = 0; j < columns; j++) {
            if (!(diagonal[j] > SMALLEST_PIVOT)) {
                return OptionalInt.of(j);
            }
        }
        return OptionalInt.empty();
    }
}
