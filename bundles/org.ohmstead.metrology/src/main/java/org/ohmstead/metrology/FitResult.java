// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.util.Arrays;
import java.util.List;
import org.ohmstead.metrology.internal.Checks;

/** What a {@link NonlinearFit} found. Immutable. */
public final class FitResult {

    private final double[] parameters;
    private final Covariance unitCovariance;
    private final CovarianceBasis basis;
    private final double rss;
    private final int degreesOfFreedom;
    private final int iterations;
    private final boolean converged;
    private final List<Integer> parametersAtBounds;

    FitResult(
            double[] parameters,
            Covariance unitCovariance,
            CovarianceBasis basis,
            double rss,
            int degreesOfFreedom,
            NonlinearFit.Ending ending) {
        this.parameters = parameters;
        this.unitCovariance = unitCovariance;
        this.basis = basis;
        this.rss = Checks.notNegative("rss", rss);
        this.degreesOfFreedom = degreesOfFreedom;
        this.iterations = ending.iterations();
        this.converged = ending.converged();
        this.parametersAtBounds = List.copyOf(ending.parametersAtBounds());
    }

    /** Returns the parameters in the order of the model. */
    public double[] parameters() {
        return parameters.clone();
    }

    /** Returns one parameter, counted from 0. */
    public double parameter(int index) {
        return parameters[index];
    }

    /** Returns one parameter with its standard uncertainty and degrees of freedom, on the basis chosen for this fit. */
    public Estimate estimate(int index) {
        double freedom = basis == CovarianceBasis.RESIDUAL_SCATTER ? degreesOfFreedom : Double.POSITIVE_INFINITY;
        return new Estimate(parameters[index], covariance().standardUncertainty(index), freedom);
    }

    /**
     * Returns the covariance matrix of the parameters on the basis chosen for this fit, by linearization at the
     * solution. A parameter that ended on a bound counts as fixed and has no uncertainty.
     *
     * @throws IllegalStateException if it is to come from the scatter but there are no more observations than
     * parameters
     */
    public Covariance covariance() {
        return covariance(basis);
    }

    /** Returns the covariance matrix of the parameters on either basis, see {@link #covariance()}. */
    public Covariance covariance(CovarianceBasis chosen) {
        if (chosen == CovarianceBasis.GIVEN_UNCERTAINTIES) {
            return unitCovariance;
        }
        double deviation = residualStandardDeviation();
        return unitCovariance.scaled(deviation * deviation);
    }

    /** Returns the standard uncertainties of the parameters on the basis chosen for this fit. */
    public double[] standardUncertainties() {
        return covariance().standardUncertainties();
    }

    /** Returns the correlation coefficient of two parameters, -1 to 1; it does not depend on the basis. */
    public double correlation(int first, int second) {
        return unitCovariance.correlation(first, second);
    }

    /** Returns the matrix of all correlation coefficients. */
    public double[][] correlationMatrix() {
        double[][] matrix = new double[parameters.length][parameters.length];
        for (int i = 0; i < matrix.length; i++) {
            for (int j = 0; j < matrix.length; j++) {
                matrix[i][j] = correlation(i, j);
            }
        }
        return matrix;
    }

    /** Returns the sum of squared residuals, each divided by the standard uncertainty of its observation. */
    public double rss() {
        return rss;
    }

    /** Returns the number of observations minus the number of parameters; 0 if the curve passes through every point. */
    public int degreesOfFreedom() {
        return degreesOfFreedom;
    }

    /**
     * Returns sqrt(RSS/(n-p)): in the unit of y with unit weights, near 1 if the given uncertainties describe the
     * scatter (Birge ratio).
     *
     * @throws IllegalStateException if there are no more observations than parameters
     */
    public double residualStandardDeviation() {
        if (degreesOfFreedom < 1) {
            throw new IllegalStateException("The fit has as many parameters as observations, so there is no scatter to"
                    + " take uncertainties from. Take more readings or give their uncertainties.");
        }
        return Math.sqrt(rss / degreesOfFreedom);
    }

    /** Returns how many steps were accepted. */
    public int iterations() {
        return iterations;
    }

    /**
     * Returns whether the search ended at a minimum; if not, the parameters are the best ones seen and are not to be
     * trusted.
     */
    public boolean converged() {
        return converged;
    }

    /** Returns which parameters, counted from 0, ended on one of their bounds. */
    public List<Integer> parametersAtBounds() {
        return parametersAtBounds;
    }

    @Override
    public String toString() {
        return "FitResult[parameters=" + Arrays.toString(parameters) + ", rss=" + rss + ", converged=" + converged
                + "]";
    }
}
