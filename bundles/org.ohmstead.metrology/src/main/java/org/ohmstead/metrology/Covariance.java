// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.util.Arrays;
import org.ohmstead.metrology.internal.Checks;

/**
 * An immutable covariance matrix: variances u² on the diagonal, covariances u(i) u(j) r(i,j) beside it. Its entries
 * are finite, it is symmetric, and no correlation coefficient lies outside -1 to 1 (by more than rounding).
 */
public final class Covariance {

    private static final double ROUNDING = 1e-9;

    private final double[][] entries;

    private Covariance(double[][] entries) {
        this.entries = entries;
    }

    /** Returns the matrix with these entries; it must be square and symmetric and is copied. */
    public static Covariance of(double[][] entries) {
        int size = entries.length;
        double[][] copy = new double[size][size];
        for (int i = 0; i < size; i++) {
            Checks.sameLength("row " + i, entries[i].length, "the matrix", size);
            Checks.notNegative("variance " + i, entries[i][i]);
            for (int j = 0; j < size; j++) {
                double bound = Math.sqrt(entries[i][i] * entries[j][j]);
                double entry = Checks.finite("entry", entries[i][j]);
                if (Math.abs(entry - entries[j][i]) > ROUNDING * bound || Math.abs(entry) > bound * (1 + ROUNDING)) {
                    throw new IllegalArgumentException("entries[" + i + "][" + j + "] is " + entry
                            + " but must equal its mirror image and not exceed the product of the two standard"
                            + " uncertainties, " + bound + ".");
                }
                copy[i][j] = (entry + entries[j][i]) / 2;
            }
        }
        return new Covariance(copy);
    }

    /** Returns the matrix of uncorrelated quantities with these standard uncertainties (each at least 0). */
    public static Covariance uncorrelated(double... standardUncertainties) {
        int size = standardUncertainties.length;
        double[][] entries = new double[size][size];
        for (int i = 0; i < size; i++) {
            double uncertainty = Checks.notNegative("standardUncertainty " + i, standardUncertainties[i]);
            entries[i][i] = uncertainty * uncertainty;
        }
        return new Covariance(entries);
    }

    /**
     * Returns the covariance matrix of the means of quantities that were read together, s(i,j)/n (GUM 5.2.3, eq. 17).
     *
     * @param readings one array of readings per quantity, all of the same length of at least two
     */
    public static Covariance ofMeans(double[]... readings) {
        int size = readings.length;
        double[] means = new double[size];
        for (int i = 0; i < size; i++) {
            Checks.sameLength("readings " + i, readings[i].length, "readings 0", readings[0].length);
            means[i] = Estimate.fromReadings(readings[i]).value();
        }
        double[][] entries = new double[size][size];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                int count = readings[i].length;
                double sum = 0;
                for (int k = 0; k < count; k++) {
                    sum += (readings[i][k] - means[i]) * (readings[j][k] - means[j]);
                }
                entries[i][j] = sum / (count - 1) / count;
            }
        }
        return of(entries);
    }

    /** Returns the number of quantities. */
    public int size() {
        return entries.length;
    }

    /** Returns the covariance of two quantities, counted from 0. */
    public double get(int i, int j) {
        return entries[i][j];
    }

    /** Returns the standard uncertainty of a quantity, counted from 0. */
    public double standardUncertainty(int i) {
        return Math.sqrt(entries[i][i]);
    }

    /** Returns all standard uncertainties. */
    public double[] standardUncertainties() {
        double[] uncertainties = new double[size()];
        Arrays.setAll(uncertainties, this::standardUncertainty);
        return uncertainties;
    }

    /**
     * Returns the correlation coefficient of two quantities, -1 to 1; 0 if one of them has no uncertainty, 1 with
     * itself.
     */
    public double correlation(int i, int j) {
        if (i == j) {
            return 1;
        }
        double product = standardUncertainty(i) * standardUncertainty(j);
        return product > 0 ? Math.max(-1, Math.min(1, entries[i][j] / product)) : 0;
    }

    /** Returns the matrix multiplied by a factor of at least 0. */
    public Covariance scaled(double factor) {
        Checks.notNegative("factor", factor);
        double[][] scaled = toArray();
        for (double[] row : scaled) {
            for (int j = 0; j < row.length; j++) {
                row[j] *= factor;
            }
        }
        return new Covariance(scaled);
    }

    /**
     * Returns the variance of a linear combination of the quantities, sum over i, j of c(i) c(j) u(i,j) (GUM eq. 13).
     */
    public double varianceOf(double... coefficients) {
        return covarianceOf(coefficients, coefficients);
    }

    /**
     * Returns the covariance of two linear combinations of the quantities, sum over i, j of a(i) b(j) u(i,j) (GUM
     * F.1.2.3).
     */
    public double covarianceOf(double[] first, double[] second) {
        Checks.sameLength("first", first.length, "the covariance matrix", size());
        Checks.sameLength("second", second.length, "the covariance matrix", size());
        double sum = 0;
        for (int i = 0; i < first.length; i++) {
            for (int j = 0; j < second.length; j++) {
                sum += first[i] * second[j] * entries[i][j];
            }
        }
        return sum;
    }

    /** Returns a copy of the entries, row by row. */
    public double[][] toArray() {
        double[][] copy = new double[entries.length][];
        Arrays.setAll(copy, i -> entries[i].clone());
        return copy;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Covariance covariance && Arrays.deepEquals(entries, covariance.entries);
    }

    @Override
    public int hashCode() {
        return Arrays.deepHashCode(entries);
    }

    @Override
    public String toString() {
        return "Covariance" + Arrays.deepToString(entries);
    }
}
