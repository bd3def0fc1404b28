// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.util.function.ToDoubleFunction;
import org.ohmstead.metrology.internal.Checks;

/**
 * The law of propagation with its next higher terms, for a model that bends noticeably within the uncertainties of its
 * inputs (GUM 5.1.2, note): u² = sum of f(i)² u(i)² + sum over i and j of (f(ij)²/2 + f(i) f(ijj)) u(i)² u(j)². The
 * inputs are uncorrelated and normally distributed; for others {@link MonteCarlo} is right. The bias is half the sum of
 * f(ii) u(i)².
 */
public final class SecondOrder {

    private static final double STEP_IN_UNCERTAINTIES = 0.25;

    private final ToDoubleFunction<double[]> model;
    private final double[] inputs;
    private final double[] steps;
    private final double value;
    private final double[] slopes;
    private final double[][] bends;
    private final double[][] twists;

    private SecondOrder(ToDoubleFunction<double[]> model, double[] inputs, double[] uncertainties) {
        this.model = model;
        this.inputs = inputs;
        int count = inputs.length;
        this.steps = new double[count];
        for (int i = 0; i < count; i++) {
            steps[i] = STEP_IN_UNCERTAINTIES * uncertainties[i];
        }
        this.value = at(0, 0, 0, 0);
        this.slopes = new double[count];
        this.bends = new double[count][count];
        this.twists = new double[count][count];
        for (int i = 0; i < count; i++) {
            if (steps[i] > 0) {
                differentiate(i);
            }
        }
    }

    /**
     * Returns the propagation with derivatives from central differences a quarter of the uncertainties wide.
     *
     * @param model y as a function of the inputs, defined and finite within half an uncertainty about them
     * @param inputs the input values
     * @param standardUncertainties their standard uncertainties, each at least 0
     */
    public static SecondOrder of(ToDoubleFunction<double[]> model, double[] inputs, double[] standardUncertainties) {
        Checks.sameLength("inputs", inputs.length, "standardUncertainties", standardUncertainties.length);
        for (int i = 0; i < inputs.length; i++) {
            Checks.finite("inputs[" + i + "]", inputs[i]);
            Checks.notNegative("standardUncertainties[" + i + "]", standardUncertainties[i]);
        }
        return new SecondOrder(model, inputs.clone(), standardUncertainties.clone());
    }

    /** Returns y with its standard uncertainty to first order. */
    public Estimate firstOrder() {
        return Estimate.of(value, Math.sqrt(firstVariance()));
    }

    /** Returns y with the bias added and with the standard uncertainty to second order. */
    public Estimate secondOrder() {
        double variance = firstVariance();
        for (int i = 0; i < slopes.length; i++) {
            for (int j = 0; j < slopes.length; j++) {
                variance += bends[i][j] * bends[i][j] / 2 + slopes[i] * twists[i][j];
            }
        }
        return Estimate.of(value + bias(), Math.sqrt(Math.max(0, variance)));
    }

    /** Returns how far the mean of y lies from the model at the means of its inputs. */
    public double bias() {
        double sum = 0;
        for (int i = 0; i < slopes.length; i++) {
            sum += bends[i][i] / 2;
        }
        return sum;
    }

    /**
     * Returns what two inputs add together, |f(ij)| u(i) u(j), in the unit of y; both counted from 0 and different
     * (GUM H.1.7 lists these for the end gauge).
     */
    public double interaction(int first, int second) {
        if (first == second) {
            throw new IllegalArgumentException(
                    "first and second are both " + first + " but an interaction is between two different inputs.");
        }
        return Math.abs(bends[first][second]);
    }

    private double firstVariance() {
        double sum = 0;
        for (double slope : slopes) {
            sum += slope * slope;
        }
        return sum;
    }

    private void differentiate(int i) {
        double step = STEP_IN_UNCERTAINTIES;
        double up = at(i, 1, i, 0);
        double down = at(i, -1, i, 0);
        double farUp = at(i, 2, i, 0);
        double farDown = at(i, -2, i, 0);
        slopes[i] = (8 * (up - down) - (farUp - farDown)) / (12 * step);
        bends[i][i] = (up - 2 * value + down) / (step * step);
        twists[i][i] = (farUp - 2 * up + 2 * down - farDown) / (2 * step * step * step);
        for (int j = 0; j < steps.length; j++) {
            if (j != i && steps[j] > 0) {
                double upUp = at(i, 1, j, 1);
                double upDown = at(i, 1, j, -1);
                double downUp = at(i, -1, j, 1);
                double downDown = at(i, -1, j, -1);
                bends[i][j] = (upUp - upDown - downUp + downDown) / (4 * step * step);
                twists[i][j] = (upUp - 2 * up + upDown - (downUp - 2 * down + downDown)) / (2 * step * step * step);
            }
        }
    }

    private double at(int i, int iSteps, int j, int jSteps) {
        double[] moved = inputs.clone();
        if (iSteps != 0) {
            moved[i] += iSteps * steps[i];
        }
        if (jSteps != 0) {
            moved[j] += jSteps * steps[j];
        }
        return Checks.finite("result of the model", model.applyAsDouble(moved));
    }
}
