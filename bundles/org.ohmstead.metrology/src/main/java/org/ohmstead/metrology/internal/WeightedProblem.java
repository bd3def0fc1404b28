// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.internal;

import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.MultivariateJacobianFunction;
import org.hipparchus.util.Pair;
import org.ohmstead.metrology.FitModel;
import org.ohmstead.metrology.Observation;

/**
 * A model with its observations, both divided by the standard uncertainties and expressed in the inner variables of
 * the bounds. Remembers the best point it was asked for. Serves one fit on one thread.
 */
public final class WeightedProblem implements MultivariateJacobianFunction {

    /** Stands for "no finite value here": so far off that the step is refused, and its square still fits a double. */
    private static final double REFUSED = 1e140;

    private final FitModel model;
    private final double[][] conditions;
    private final double[] target;
    private final double[] uncertainties;
    private final List<Bounds> bounds;
    private double[] bestInner;
    private double bestRss = Double.POSITIVE_INFINITY;

    /** Prepares the observations. */
    public WeightedProblem(FitModel model, List<Observation> observations, List<Bounds> bounds) {
        this.model = model;
        this.bounds = bounds;
        int count = observations.size();
        conditions = new double[count][];
        target = new double[count];
        uncertainties = new double[count];
        for (int i = 0; i < count; i++) {
            Observation observation = observations.get(i);
            conditions[i] = observation.conditions();
            uncertainties[i] = observation.standardUncertainty();
            target[i] = observation.value() / uncertainties[i];
        }
        bestInner = new double[bounds.size()];
    }

    /** Returns the weighted observed values. */
    public double[] target() {
        return target.clone();
    }

    /** Returns the inner variables for parameters within their bounds. */
    public double[] inner(double[] parameters) {
        double[] inner = new double[parameters.length];
        for (int j = 0; j < inner.length; j++) {
            inner[j] = bounds.get(j).inner(parameters[j]);
        }
        return inner;
    }

    /** Returns whether the model and its gradient are finite for every observation. */
    public boolean isFiniteAt(double[] inner) {
        double[] parameters = outer(inner);
        for (double[] condition : conditions) {
            if (!Double.isFinite(model.value(parameters, condition))) {
                return false;
            }
            for (double slope : model.gradient(parameters, condition)) {
                if (!Double.isFinite(slope)) {
                    return false;
                }
            }
        }
        return true;
    }

    @Override
    public Pair<RealVector, RealMatrix> value(RealVector point) {
        double[] inner = point.toArray();
        double[] parameters = outer(inner);
        double[] values = new double[target.length];
        double[][] slopes = new double[target.length][inner.length];
        boolean finite = isFiniteAt(inner);
        double rss = 0;
        for (int i = 0; i < values.length; i++) {
            values[i] = finite ? model.value(parameters, conditions[i]) / uncertainties[i] : REFUSED;
            rss += (target[i] - values[i]) * (target[i] - values[i]);
            if (finite) {
                double[] gradient = model.gradient(parameters, conditions[i]);
                for (int j = 0; j < inner.length; j++) {
                    slopes[i][j] =
                            gradient[j] / uncertainties[i] * bounds.get(j).slope(inner[j]);
                }
            }
        }
        if (finite && rss <= bestRss) {
            bestRss = rss;
            bestInner = inner;
        }
        return new Pair<>(new ArrayRealVector(values, false), new Array2DRowRealMatrix(slopes, false));
    }

    /** Returns the parameters of the best point seen so far. */
    public double[] bestParameters() {
        return outer(bestInner);
    }

    /** Returns the weighted sum of squared residuals at the best point seen so far. */
    public double bestRss() {
        return bestRss;
    }

    /** Returns the weighted Jacobian with respect to the chosen parameters themselves. */
    public double[][] jacobian(double[] parameters, List<Integer> columns) {
        double[][] jacobian = new double[target.length][columns.size()];
        for (int i = 0; i < jacobian.length; i++) {
            double[] gradient = model.gradient(parameters, conditions[i]);
            for (int j = 0; j < columns.size(); j++) {
                jacobian[i][j] = gradient[columns.get(j)] / uncertainties[i];
            }
        }
        return jacobian;
    }

    private double[] outer(double[] inner) {
        double[] parameters = new double[inner.length];
        for (int j = 0; j < inner.length; j++) {
            parameters[j] = bounds.get(j).outer(inner[j]);
        }
        return parameters;
    }
}
