// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.internal;

import java.util.Arrays;

/**
 * Levenberg-Marquardt search for the values of {@link StageCurve} with its own derivatives, on arrays that are made
 * once: it is meant for thousands of fits of the same readings' conditions. Serves one thread.
 *
 * <p>The damping follows D. W. Marquardt, J. SIAM 11 (1963) 431: normal matrix scaled to a unit diagonal, damping
 * divided by ten after a step that helped and multiplied by ten after one that did not. Bounds are kept by projection:
 * a value on its bound that would leave it stays there for the step.
 */
public final class StageSolver {
    private static final int MOST_STEPS = 200;
    /** A step that promises less than this share of chi² (about 1e-7 of a standard uncertainty) is the last. */
    private static final double AT_REST = 1e-14;

    private static final double ROUNDING = 1e-12;
    private static final double FIRST_DAMPING = 1e-6;
    private static final double RETRY_DAMPING = 1e-3;
    private static final double MOST_DAMPING = 1e12;
    private static final double FACTOR = 10;

    private final StageData data;
    private final int[] free;
    private final double[] lower;
    private final double[] upper;
    private final double[] inverseUncertainties;
    private final double[] conductances;
    private final double[] gradient = new double[StageCurve.SLOTS];
    private final double[] row;
    private final double[] trial;
    private final double[] step;
    private final double[] packedRight;
    private final double[][] packed;
    private final double[][] factor;
    private final int[] active;
    private final boolean straight;
    private double[][] normal;
    private double[] right;
    private double[][] trialNormal;
    private double[] trialRight;

    /**
     * Prepares a search.
     *
     * @param data the readings
     * @param free which slots to seek, rising
     * @param lower lower bounds, one for each slot
     * @param upper upper bounds, one for each slot
     */
    public StageSolver(StageData data, int[] free, double[] lower, double[] upper) {
        this.data = data;
        this.free = free.clone();
        this.lower = lower.clone();
        this.upper = upper.clone();
        int size = free.length;
        inverseUncertainties = new double[data.size()];
        conductances = new double[data.size()];
        for (int i = 0; i < conductances.length; i++) {
            inverseUncertainties[i] = 1 / data.standardUncertaintyWatts()[i];
            conductances[i] = data.channels()[i] / data.channelOhms()[i] * inverseUncertainties[i];
        }
        row = new double[size];
        trial = new double[StageCurve.SLOTS];
        step = new double[size];
        packedRight = new double[size];
        packed = new double[size][size];
        factor = new double[size][size];
        active = new int[size];
        straight = Arrays.equals(free, new int[] {StageCurve.GAIN, StageCurve.SATURATION, StageCurve.OUTPUT});
        normal = new double[size][size];
        right = new double[size];
        trialNormal = new double[size][size];
        trialRight = new double[size];
    }

    /**
     * Moves the slots to where the sum of squares is smallest.
     *
     * @param slots the start, changed to the place found
     * @param watts the powers to fit
     * @param weights what each squared residual counts beside 1/u²
     * @return chi², negative or not a number when the search did not come to rest
     */
    public double search(double[] slots, double[] watts, double[] weights) {
        for (int slot : free) {
            slots[slot] = Math.max(lower[slot], Math.min(upper[slot], slots[slot]));
        }
        double chiSquared = evaluate(slots, watts, weights, normal, right);
        double damping = FIRST_DAMPING;
        for (int steps = 0; steps < MOST_STEPS && chiSquared >= 0; steps++) {
            int size = gather(slots);
            double promised = size == 0 ? 0 : promise(size, damping);
            if (promised >= 0) {
                boolean last = promised <= AT_REST * Math.max(1, chiSquared);
                double moved = move(slots, size, watts, weights);
                if (moved <= chiSquared + (last ? ROUNDING * Math.max(1, chiSquared) : 0)) {
                    chiSquared = moved;
                    accept(slots);
                    damping /= FACTOR;
                    if (last) {
                        return chiSquared;
                    }
                    continue;
                }
                if (last) {
                    return chiSquared;
                }
            }
            damping = Math.max(RETRY_DAMPING, damping * FACTOR);
            if (damping > MOST_DAMPING) {
                return promised >= 0 ? chiSquared : -1;
            }
        }
        return -1;
    }

    /** Returns the place found from a start, with all that belongs to it. */
    public StageSolution solve(double[] start, double[] weights) {
        double[] slots = start.clone();
        double chiSquared = search(slots, data.powerWatts(), weights);
        boolean converged = chiSquared >= 0;
        // After a search that came to rest the normal matrix is that of the place found.
        double found = converged ? chiSquared : evaluate(slots, data.powerWatts(), weights, normal, right);
        boolean[] atBound = new boolean[free.length];
        int size = 0;
        for (int j = 0; j < free.length; j++) {
            double value = slots[free[j]];
            atBound[j] = value <= lower[free[j]] || value >= upper[free[j]];
            if (!atBound[j]) {
                active[size] = j;
                size++;
            }
        }
        pack(size);
        double[][] inverse = SmallSymmetric.inverse(packed, size);
        double[][] covariance = inverse.length == size ? new double[free.length][free.length] : new double[0][];
        for (int i = 0; i < inverse.length; i++) {
            for (int j = 0; j < inverse.length; j++) {
                covariance[active[i]][active[j]] = inverse[i][j];
            }
        }
        double[][] copy = new double[free.length][];
        for (int i = 0; i < copy.length; i++) {
            copy[i] = normal[i].clone();
        }
        return new StageSolution(slots, free.clone(), atBound, found, copy, covariance, converged);
    }

    /** Collects what may move: all but values on a bound that want to go beyond it. */
    private int gather(double[] slots) {
        int size = 0;
        for (int j = 0; j < free.length; j++) {
            double value = slots[free[j]];
            boolean held = value <= lower[free[j]] && right[j] < 0 || value >= upper[free[j]] && right[j] > 0;
            if (!held && normal[j][j] > 0) {
                active[size] = j;
                size++;
            }
        }
        pack(size);
        return size;
    }

    private void pack(int size) {
        for (int i = 0; i < size; i++) {
            packedRight[i] = right[active[i]];
            for (int j = 0; j <= i; j++) {
                packed[i][j] = normal[active[i]][active[j]];
            }
        }
    }

    /** Returns the fall of chi² that the step promises, or a negative number when there is no step. */
    private double promise(int size, double damping) {
        if (!SmallSymmetric.solve(packed, packedRight, size, damping, factor, step)) {
            return -1;
        }
        double promised = 0;
        for (int i = 0; i < size; i++) {
            promised += step[i] * packedRight[i];
        }
        return Math.max(0, promised);
    }

    private double move(double[] slots, int size, double[] watts, double[] weights) {
        System.arraycopy(slots, 0, trial, 0, trial.length);
        for (int i = 0; i < size; i++) {
            int slot = free[active[i]];
            trial[slot] = Math.max(lower[slot], Math.min(upper[slot], trial[slot] + step[i]));
        }
        return evaluate(trial, watts, weights, trialNormal, trialRight);
    }

    private void accept(double[] slots) {
        System.arraycopy(trial, 0, slots, 0, slots.length);
        double[][] matrix = normal;
        normal = trialNormal;
        trialNormal = matrix;
        double[] vector = right;
        right = trialRight;
        trialRight = vector;
    }

    private double evaluate(double[] slots, double[] watts, double[] weights, double[][] matrix, double[] vector) {
        if (straight) {
            return evaluateStraight(slots, watts, weights, matrix, vector);
        }
        int size = free.length;
        for (int i = 0; i < size; i++) {
            vector[i] = 0;
            Arrays.fill(matrix[i], 0);
        }
        double[] volts = data.supplyVolts();
        double[] ohms = data.channelOhms();
        double[] progress = data.progress();
        double chiSquared = 0;
        for (int k = 0; k < watts.length; k++) {
            double peakVolts = StageCurve.peakVolts(slots, volts[k], ohms[k], progress[k], gradient);
            double perVolt = conductances[k] * peakVolts;
            double residual = watts[k] * inverseUncertainties[k] - perVolt * peakVolts / 2;
            double weight = weights[k];
            chiSquared += weight * residual * residual;
            for (int i = 0; i < size; i++) {
                double slope = perVolt * gradient[free[i]];
                row[i] = slope;
                double weighted = weight * slope;
                vector[i] += weighted * residual;
                for (int j = 0; j <= i; j++) {
                    matrix[i][j] += weighted * row[j];
                }
            }
        }
        return chiSquared;
    }

    /** The same for gain, saturation and output alone, the usual model, with the sums kept out of arrays. */
    private double evaluateStraight(
            double[] slots, double[] watts, double[] weights, double[][] matrix, double[] vector) {
        double[] volts = data.supplyVolts();
        double[] ohms = data.channelOhms();
        double gain = slots[StageCurve.GAIN];
        double saturation = slots[StageCurve.SATURATION];
        double output = slots[StageCurve.OUTPUT];
        double chiSquared = 0;
        double gainGain = 0;
        double gainOther = 0;
        double gainOutput = 0;
        double otherOther = 0;
        double otherOutput = 0;
        double outputOutput = 0;
        double gainRight = 0;
        double otherRight = 0;
        double outputRight = 0;
        for (int k = 0; k < watts.length; k++) {
            double totalOhms = ohms[k] + output;
            if (!(totalOhms > 0)) {
                return Double.NaN;
            }
            double inverseOhms = 1 / totalOhms;
            double share = ohms[k] * inverseOhms;
            double peakVolts = Math.max(0, (gain * volts[k] - saturation) * share);
            double perVolt = conductances[k] * peakVolts;
            double residual = watts[k] * inverseUncertainties[k] - perVolt * peakVolts / 2;
            double weight = weights[k];
            double otherSlope = -perVolt * share;
            double gainSlope = -otherSlope * volts[k];
            double outputSlope = -perVolt * peakVolts * inverseOhms;
            chiSquared += weight * residual * residual;
            gainGain += weight * gainSlope * gainSlope;
            gainOther += weight * gainSlope * otherSlope;
            gainOutput += weight * gainSlope * outputSlope;
            otherOther += weight * otherSlope * otherSlope;
            otherOutput += weight * otherSlope * outputSlope;
            outputOutput += weight * outputSlope * outputSlope;
            gainRight += weight * gainSlope * residual;
            otherRight += weight * otherSlope * residual;
            outputRight += weight * outputSlope * residual;
        }
        matrix[0][0] = gainGain;
        matrix[1][0] = gainOther;
        matrix[1][1] = otherOther;
        matrix[2][0] = gainOutput;
        matrix[2][1] = otherOutput;
        matrix[2][2] = outputOutput;
        vector[0] = gainRight;
        vector[1] = otherRight;
        vector[2] = outputRight;
        return chiSquared;
    }
}
