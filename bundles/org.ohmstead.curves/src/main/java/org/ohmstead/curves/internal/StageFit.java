// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.internal;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The best of several searches, plain or by Huber's method.
 *
 * @param solution where it ended
 * @param weights what each squared residual counts; all 1 in a plain fit
 * @param objective chi², or in a robust fit the sum of Huber's loss that takes its place
 * @param robustScale how much larger the scatter of the middle half is than the uncertainties explain, at least 1; 1 in
 *     a plain fit
 * @param covarianceFactor what the inverse normal matrix has to be multiplied with for a robust fit's covariance at
 *     known uncertainties; 1 in a plain fit
 */
public record StageFit(
        StageSolution solution, double[] weights, double objective, double robustScale, double covarianceFactor) {
    /** Residuals up to this many standard deviations count fully: 95 % efficiency with normal scatter (P. J. Huber). */
    public static final double HUBER = 1.345;

    /** Mean of min(z², 1.345²) for a standard normal z (closed form by the normal distribution). */
    private static final double EXPECTED_SQUARE = 0.7102;

    private static final double MEDIAN_TO_DEVIATION = 1.4826;
    private static final int MOST_ROUNDS = 100;
    private static final double SETTLED = 1e-9;

    /** Returns the best fit, or nothing if no search came to rest where the readings determine all values. */
    public static Optional<StageFit> best(
            StageData data, int[] free, double[] lower, double[] upper, List<double[]> starts, boolean robust) {
        StageSolver solver = new StageSolver(data, free, lower, upper);
        double[] ones = new double[data.size()];
        Arrays.fill(ones, 1);
        StageFit best = null;
        for (double[] start : starts) {
            StageSolution solution = solver.solve(start, ones);
            StageFit fit = new StageFit(solution, ones, solution.chiSquared(), 1, 1);
            if (robust && solution.usable()) {
                fit = robust(data, solver, solution);
            }
            if (fit.solution().usable() && (best == null || fit.objective() < best.objective())) {
                best = fit;
            }
        }
        return Optional.ofNullable(best);
    }

    /** Iteratively reweighted least squares with Huber's weights and the scale of the median residual. */
    private static StageFit robust(StageData data, StageSolver solver, StageSolution plain) {
        StageSolution solution = plain;
        double[] weights = new double[data.size()];
        double scale = 1;
        double before = Double.POSITIVE_INFINITY;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double[] residuals = residuals(data, solution.slots());
            scale = scale(residuals, solution.free().length);
            double limit = HUBER * scale;
            Arrays.setAll(weights, i -> Math.abs(residuals[i]) <= limit ? 1 : limit / Math.abs(residuals[i]));
            double loss = loss(residuals, limit);
            if (Math.abs(before - loss) <= SETTLED * Math.max(1, loss)) {
                break;
            }
            before = loss;
            solution = solver.solve(solution.slots(), weights);
            if (!solution.usable()) {
                break;
            }
        }
        double[] residuals = residuals(data, solution.slots());
        double limit = HUBER * scale;
        return new StageFit(
                solution,
                weights.clone(),
                loss(residuals, limit),
                scale,
                covarianceFactor(residuals, weights, limit, scale));
    }

    /** Returns the residuals divided by their uncertainties. */
    public static double[] residuals(StageData data, double[] slots) {
        double[] residuals = new double[data.size()];
        double[] gradient = new double[StageCurve.SLOTS];
        for (int i = 0; i < residuals.length; i++) {
            double peakVolts = StageCurve.peakVolts(
                    slots, data.supplyVolts()[i], data.channelOhms()[i], data.progress()[i], gradient);
            double watts = data.channels()[i] * PeakPower.watts(peakVolts, data.channelOhms()[i]);
            residuals[i] = (data.powerWatts()[i] - watts) / data.standardUncertaintyWatts()[i];
        }
        return residuals;
    }

    private static double scale(double[] residuals, int parameters) {
        double[] sizes = Arrays.stream(residuals).map(Math::abs).sorted().toArray();
        int count = sizes.length;
        double median = (sizes[(count - 1) / 2] + sizes[count / 2]) / 2;
        double lost = count > parameters ? Math.sqrt((double) count / (count - parameters)) : 1;
        return Math.max(1, MEDIAN_TO_DEVIATION * median * lost);
    }

    private static double loss(double[] residuals, double limit) {
        double loss = 0;
        for (double residual : residuals) {
            double size = Math.abs(residual);
            loss += size <= limit ? size * size : limit * (2 * size - limit);
        }
        return loss;
    }

    /**
     * The inverse of the weighted normal matrix is near (X'X)^-1 divided by the mean weight; Huber's covariance is
     * mean(psi²)/mean(psi')² (X'X)^-1 (P. J. Huber, Robust Statistics, 1981, 7.6), here with the known scale for what
     * is expected of normal scatter.
     */
    private static double covarianceFactor(double[] residuals, double[] weights, double limit, double scale) {
        double squares = 0;
        double inside = 0;
        double meanWeight = 0;
        for (int i = 0; i < residuals.length; i++) {
            double bent = Math.min(Math.abs(residuals[i]), limit);
            squares += bent * bent;
            inside += Math.abs(residuals[i]) <= limit ? 1 : 0;
            meanWeight += weights[i];
        }
        int count = residuals.length;
        double share = Math.max(1, inside) / count;
        double expected = Math.max(squares / count, EXPECTED_SQUARE * scale * scale);
        return expected / (share * share) * meanWeight / count;
    }
}
