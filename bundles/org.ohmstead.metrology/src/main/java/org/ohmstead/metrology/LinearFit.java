// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.util.Arrays;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.LeastSquaresAlgebra;
import org.ohmstead.units.text.Messages;

/**
 * A fit of y = sum of coefficient(j) x(j) by least squares (Householder QR with refinement, no normal equations),
 * optionally weighted by 1/u².
 */
public final class LinearFit {

    private final double[] coefficients;
    private final Covariance unitCovariance;
    private final CovarianceBasis basis;
    private final double rss;
    private final double totalSquares;
    private final int observations;

    private LinearFit(double[][] design, double[] values, double[] uncertainties, CovarianceBasis basis)
            throws FitException {
        int columns = design[0].length;
        double[][] rows = new double[design.length][columns];
        double[] rightSide = new double[design.length];
        for (int i = 0; i < design.length; i++) {
            rightSide[i] = Checks.finite("values[" + i + "]", values[i]) / uncertainties[i];
            for (int j = 0; j < columns; j++) {
                rows[i][j] = Checks.finite("design[" + i + "][" + j + "]", design[i][j]) / uncertainties[i];
            }
        }
        LeastSquaresAlgebra algebra = new LeastSquaresAlgebra(rows);
        if (algebra.dependentColumn().isPresent()) {
            throw new FitException(Messages.of(LinearFit.class)
                    .text(
                            "fit.coefficient",
                            String.valueOf(algebra.dependentColumn().getAsInt() + 1)));
        }
        this.coefficients = algebra.solve(rightSide);
        this.unitCovariance = Covariance.of(algebra.inverseNormalMatrix());
        this.basis = basis;
        this.observations = design.length;
        double sum = 0;
        for (double residual : algebra.residuals(coefficients, rightSide)) {
            sum += residual * residual;
        }
        this.rss = sum;
        this.totalSquares = totalSquares(design, values, uncertainties);
    }

    /**
     * Returns the unweighted fit; the scatter about it sets the uncertainties ({@link
     * CovarianceBasis#RESIDUAL_SCATTER}).
     *
     * @param design one row per observation, one column per coefficient; put a column of ones in for an intercept
     * @param values the observed y, at least as many as coefficients
     * @throws FitException if a column is zero or a combination of others
     */
    public static LinearFit of(double[][] design, double[] values) throws FitException {
        double[] ones = new double[values.length];
        Arrays.fill(ones, 1);
        return weighted(design, values, ones, CovarianceBasis.RESIDUAL_SCATTER);
    }

    /**
     * Returns the fit weighted by 1/u².
     *
     * @param design one row per observation, one column per coefficient
     * @param values the observed y, at least as many as coefficients
     * @param standardUncertainties the standard uncertainty of each y, greater than 0
     * @param basis where the uncertainties of the coefficients come from
     * @throws FitException if a column is zero or a combination of others
     */
    public static LinearFit weighted(
            double[][] design, double[] values, double[] standardUncertainties, CovarianceBasis basis)
            throws FitException {
        Checks.sameLength("design", design.length, "values", values.length);
        Checks.sameLength("standardUncertainties", standardUncertainties.length, "values", values.length);
        for (double uncertainty : standardUncertainties) {
            Checks.positive("standardUncertainty", uncertainty);
        }
        if (design.length == 0 || design[0].length == 0 || design.length < design[0].length) {
            throw new IllegalArgumentException("design has " + design.length
                    + " rows but needs at least one column and at least as many rows as columns.");
        }
        for (double[] row : design) {
            Checks.sameLength("a row of design", row.length, "the first row", design[0].length);
        }
        return new LinearFit(design, values, standardUncertainties, basis);
    }

    /** Returns the unweighted line y = coefficient(0) + coefficient(1) x. */
    public static LinearFit line(double[] x, double[] y) throws FitException {
        return polynomial(x, y, 1);
    }

    /**
     * Returns the unweighted polynomial y = sum of coefficient(j) x^j.
     *
     * @param degree the highest power, at least 0 and below the number of readings
     */
    public static LinearFit polynomial(double[] x, double[] y, int degree) throws FitException {
        Checks.notNegative("degree", degree);
        double[][] design = new double[x.length][degree + 1];
        for (int i = 0; i < x.length; i++) {
            double power = 1;
            for (int j = 0; j <= degree; j++) {
                design[i][j] = power;
                power *= x[i];
            }
        }
        return of(design, y);
    }

    /** Returns the coefficients in the order of the design's columns. */
    public double[] coefficients() {
        return coefficients.clone();
    }

    /** Returns one coefficient, counted from 0. */
    public double coefficient(int index) {
        return coefficients[index];
    }

    /** Returns one coefficient with its standard uncertainty and degrees of freedom. */
    public Estimate estimate(int index) {
        return new Estimate(coefficients[index], covariance().standardUncertainty(index), coverageDegreesOfFreedom());
    }

    /**
     * Returns the covariance matrix of the coefficients on the basis chosen for this fit.
     *
     * @throws IllegalStateException if it is to come from the scatter but there are no more observations than
     * coefficients
     */
    public Covariance covariance() {
        return covariance(basis);
    }

    /** Returns the covariance matrix of the coefficients on either basis, see {@link #covariance()}. */
    public Covariance covariance(CovarianceBasis chosen) {
        if (chosen == CovarianceBasis.GIVEN_UNCERTAINTIES) {
            return unitCovariance;
        }
        double deviation = residualStandardDeviation();
        return unitCovariance.scaled(deviation * deviation);
    }

    /** Returns the sum of squared residuals, each divided by its standard uncertainty if weighted. */
    public double rss() {
        return rss;
    }

    /** Returns observations minus coefficients. */
    public int degreesOfFreedom() {
        return observations - coefficients.length;
    }

    /**
     * Returns sqrt(RSS/(n-p)): in the unit of y if unweighted, near 1 if the given uncertainties describe the scatter
     * (Birge ratio).
     *
     * @throws IllegalStateException if there are no more observations than coefficients
     */
    public double residualStandardDeviation() {
        if (degreesOfFreedom() < 1) {
            throw new IllegalStateException("The fit has as many coefficients as observations, so there is no scatter"
                    + " to take uncertainties from. Take more readings or give their uncertainties.");
        }
        return Math.sqrt(rss / degreesOfFreedom());
    }

    /**
     * Returns the coefficient of determination 1 - RSS/total, 0 to 1. The total is about the (weighted) mean if the
     * design has a column of equal entries (an intercept), otherwise about zero. It is 1 if the total is zero.
     */
    public double rSquared() {
        return totalSquares > 0 ? 1 - rss / totalSquares : 1;
    }

    /**
     * Returns the fitted y with its standard uncertainty (of the fit, not of a new reading).
     *
     * @param row the regressors, one per coefficient
     */
    public Estimate predict(double... row) {
        Checks.sameLength("row", row.length, "coefficients", coefficients.length);
        double value = 0;
        for (int j = 0; j < row.length; j++) {
            value += coefficients[j] * row[j];
        }
        double variance = Math.max(0, covariance().varianceOf(row));
        return new Estimate(value, Math.sqrt(variance), coverageDegreesOfFreedom());
    }

    private double coverageDegreesOfFreedom() {
        return basis == CovarianceBasis.RESIDUAL_SCATTER ? degreesOfFreedom() : Double.POSITIVE_INFINITY;
    }

    private static double totalSquares(double[][] design, double[] values, double[] uncertainties) {
        double weights = 0;
        double weighted = 0;
        for (int i = 0; i < values.length; i++) {
            double weight = 1 / uncertainties[i] / uncertainties[i];
            weights += weight;
            weighted += weight * values[i];
        }
        double centre = hasIntercept(design) ? weighted / weights : 0;
        double total = 0;
        for (int i = 0; i < values.length; i++) {
            double distance = (values[i] - centre) / uncertainties[i];
            total += distance * distance;
        }
        return total;
    }

    private static boolean hasIntercept(double[][] design) {
        for (int j = 0; j < design[0].length; j++) {
            int column = j;
            double first = design[0][column];
            if (first != 0 && Arrays.stream(design).allMatch(row -> Double.compare(row[column], first) == 0)) {
                return true;
            }
        }
        return false;
    }
}
