// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import org.ohmstead.metrology.internal.Checks;

/**
 * Values y = f(x) with the covariance matrix that the inputs' uncertainties give them, by the law of propagation of
 * uncertainty to first order: U(y) = J U(x) Jᵀ (GUM 5.2.2, eq. 13, and H.2.3 for several outputs). First order only:
 * where f bends noticeably within u(x), use {@link MonteCarlo}.
 */
public final class Propagation {

    private static final double STEP_IN_UNCERTAINTIES = 0.1;
    private static final double SMALLEST_RELATIVE_STEP = 1e-6;

    /** Several outputs computed from several inputs. */
    @FunctionalInterface
    public interface VectorFunction {

        /** Returns the outputs for these inputs; always the same number of finite values. */
        double[] value(double[] inputs);
    }

    private final double[] values;
    private final double[][] sensitivities;
    private final Covariance covariance;

    private Propagation(double[] values, double[][] sensitivities, Covariance inputs) {
        this.values = values;
        this.sensitivities = sensitivities;
        double[][] entries = new double[values.length][values.length];
        for (int i = 0; i < values.length; i++) {
            for (int j = 0; j < values.length; j++) {
                entries[i][j] = inputs.covarianceOf(sensitivities[i], sensitivities[j]);
            }
        }
        this.covariance = Covariance.of(entries);
    }

    /**
     * Returns the outputs with sensitivities from fourth-order central differences. The step is a tenth of the input's
     * standard uncertainty, but at least a millionth of the input.
     *
     * @param function the outputs as a function of the inputs, defined in the neighbourhood of the inputs
     * @param inputs the input values
     * @param covariance the inputs' covariance matrix, of the same size
     */
    public static Propagation numeric(VectorFunction function, double[] inputs, Covariance covariance) {
        Checks.sameLength("inputs", inputs.length, "the covariance matrix", covariance.size());
        double[] values = evaluate(function, inputs.clone());
        double[][] sensitivities = new double[values.length][inputs.length];
        for (int j = 0; j < inputs.length; j++) {
            double step = Math.max(
                    STEP_IN_UNCERTAINTIES * covariance.standardUncertainty(j),
                    SMALLEST_RELATIVE_STEP * Math.abs(inputs[j]));
            if (step <= 0) {
                step = SMALLEST_RELATIVE_STEP;
            }
            double[] near = difference(function, inputs, j, step);
            double[] nearer = difference(function, inputs, j, step / 2);
            for (int i = 0; i < values.length; i++) {
                sensitivities[i][j] = (4 * nearer[i] - near[i]) / 3;
            }
        }
        return new Propagation(values, sensitivities, covariance);
    }

    /**
     * Returns one output with sensitivities from central differences, see {@link #numeric(VectorFunction, double[],
     * Covariance)}.
     */
    public static Propagation numericScalar(
            ToDoubleFunction<double[]> function, double[] inputs, Covariance covariance) {
        return numeric((VectorFunction) x -> new double[] {function.applyAsDouble(x)}, inputs, covariance);
    }

    /**
     * Returns outputs whose sensitivities are known.
     *
     * @param values the outputs
     * @param sensitivities dy(i)/dx(j), one row per output, one column per input
     * @param covariance the inputs' covariance matrix
     */
    public static Propagation withSensitivities(double[] values, double[][] sensitivities, Covariance covariance) {
        Checks.sameLength("sensitivities", sensitivities.length, "values", values.length);
        double[][] copy = new double[sensitivities.length][];
        for (int i = 0; i < copy.length; i++) {
            Checks.finite("values[" + i + "]", values[i]);
            Checks.sameLength(
                    "sensitivities[" + i + "]", sensitivities[i].length, "the covariance matrix", covariance.size());
            copy[i] = sensitivities[i].clone();
            for (double sensitivity : copy[i]) {
                Checks.finite("sensitivity", sensitivity);
            }
        }
        return new Propagation(values.clone(), copy, covariance);
    }

    /** Returns the outputs. */
    public double[] values() {
        return values.clone();
    }

    /** Returns the outputs' covariance matrix. */
    public Covariance covariance() {
        return covariance;
    }

    /** Returns the sensitivity dy/dx of one output to one input, both counted from 0. */
    public double sensitivity(int output, int input) {
        return sensitivities[output][input];
    }

    /** Returns one output as an estimate whose uncertainty is taken as exactly known (infinite degrees of freedom). */
    public Estimate estimate(int output) {
        return estimate(output, Double.POSITIVE_INFINITY);
    }

    /**
     * Returns one output as an estimate with degrees of freedom that the caller knows, e.g. those of simultaneous
     * readings.
     */
    public Estimate estimate(int output, double degreesOfFreedom) {
        return new Estimate(values[output], covariance.standardUncertainty(output), degreesOfFreedom);
    }

    @Override
    public String toString() {
        return "Propagation[values=" + Arrays.toString(values) + ", covariance=" + covariance + "]";
    }

    private static double[] evaluate(VectorFunction function, double[] inputs) {
        double[] outputs = function.value(inputs).clone();
        for (int i = 0; i < outputs.length; i++) {
            Checks.finite("output " + i + " of the function", outputs[i]);
        }
        return outputs;
    }

    private static double[] difference(VectorFunction function, double[] inputs, int index, double step) {
        double[] above = inputs.clone();
        above[index] += step;
        double[] below = inputs.clone();
        below[index] -= step;
        double width = above[index] - below[index];
        double[] slopes = evaluate(function, above);
        double[] lower = evaluate(function, below);
        for (int i = 0; i < slopes.length; i++) {
            slopes[i] = (slopes[i] - lower[i]) / width;
        }
        return slopes;
    }
}
