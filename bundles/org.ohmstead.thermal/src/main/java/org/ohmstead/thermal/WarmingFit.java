// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.QRDecomposition;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.metrology.FitException;
import org.ohmstead.metrology.FitResult;
import org.ohmstead.metrology.NonlinearFit;
import org.ohmstead.metrology.Observation;

/** A record fitted with so many time constants. */
final class WarmingFit {
    private static final int GRID = 24;
    private static final double FASTEST_OF_SPAN = 1e-3;
    private static final double SLOWEST_OF_SPAN = 5;
    /** So many readings, spread over the record, are enough to find a start. */
    private static final int ENOUGH = 200;

    private static final int MOST_ITERATIONS = 300;
    /** A time constant this many times shorter than the spacing of the readings leaves no trace in them. */
    private static final double TOO_FAST = 20;

    /** Natural logarithm of a factor of some hundred thousand. */
    private static final double WITHIN_REASON = 12;

    private static final double SINGULAR = 1e-10;

    private final WarmingCurve curve;
    private final int stageCount;
    private final int readingCount;
    private final FitResult result;

    private WarmingFit(HeatRecord record, WarmingCurve curve, int stageCount, FitResult result) {
        this.curve = curve;
        this.stageCount = stageCount;
        this.readingCount = record.readings().size();
        this.result = result;
    }

    /** Returns the fit, or empty when the readings do not determine so many time constants. */
    static Optional<WarmingFit> of(HeatRecord record, int stageCount) {
        WarmingCurve curve = new WarmingCurve(record, stageCount);
        if (record.readings().size() < curve.parameterCount() + 3) {
            return Optional.empty();
        }
        double[] start = start(record, stageCount);
        if (start.length == 0) {
            return Optional.empty();
        }
        List<Observation> observations = new ArrayList<>();
        for (int i = 0; i < record.readings().size(); i++) {
            observations.add(Observation.of(i, record.readings().get(i).celsius()));
        }
        try {
            FitResult result = bounded(record, curve, start, stageCount).fit(observations);
            return result.converged() && result.parametersAtBounds().isEmpty() && finite(result)
                    ? Optional.of(new WarmingFit(record, curve, stageCount, result))
                    : Optional.empty();
        } catch (FitException undetermined) {
            // That the readings do not determine this many is the answer, not a failure.
            return Optional.empty();
        }
    }

    /** Returns the fit whose time constants and resistances stay within reason, so that one that is not there cannot run away. */
    private static NonlinearFit bounded(HeatRecord record, WarmingCurve curve, double[] start, int stageCount) {
        List<HeatReading> readings = record.readings();
        double span =
                readings.get(readings.size() - 1).seconds() - readings.get(0).seconds();
        double fastest = Math.log(span / readings.size() / TOO_FAST);
        NonlinearFit fit = NonlinearFit.of(curve, start).withMaximumIterations(MOST_ITERATIONS);
        for (int stage = 0; stage < stageCount; stage++) {
            int at = curve.stageAt(stage);
            fit = fit.withBounds(at, Math.min(fastest, start[at] - 1), start[at] + WITHIN_REASON);
            if (curve.heated()) {
                fit = fit.withBounds(at + 1, start[at + 1] - WITHIN_REASON, start[at + 1] + WITHIN_REASON);
            }
        }
        return fit;
    }

    private static boolean finite(FitResult result) {
        for (double uncertainty : result.standardUncertainties()) {
            if (!Double.isFinite(uncertainty)) {
                return false;
            }
        }
        return true;
    }

    /** Returns the best of a grid of time constants, the other parameters by linear least squares; empty when none will do. */
    private static double[] start(HeatRecord record, int stageCount) {
        List<HeatReading> readings = record.readings();
        int stride = Math.max(1, readings.size() / ENOUGH);
        List<HeatReading> some = new ArrayList<>();
        for (int i = 0; i < readings.size(); i += stride) {
            some.add(readings.get(i));
        }
        HeatRecord thinned = new HeatRecord(some, record.powers(), record.startsCold(), record.airCelsius());
        WarmingCurve curve = new WarmingCurve(thinned, stageCount);
        double span =
                readings.get(readings.size() - 1).seconds() - readings.get(0).seconds();
        double known = record.airCelsius().orElse(0);
        double[] values =
                some.stream().mapToDouble(reading -> reading.celsius() - known).toArray();
        double[] best = new double[0];
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < GRID; i++) {
            int others = stageCount == 1 ? 1 : i;
            for (int j = 0; j < others; j++) {
                double[] taus = stageCount == 1
                        ? new double[] {span * ratio(i)}
                        : new double[] {span * ratio(j), span * ratio(i)};
                double[][] columns = curve.columns(taus);
                double[] linear = linear(columns, values);
                double[] parameters = linear.length == 0 ? linear : curve.parameters(taus, linear);
                double squares = parameters.length == 0 ? least : squares(columns, linear, values);
                if (squares < least) {
                    least = squares;
                    best = parameters;
                }
            }
        }
        return best;
    }

    private static double ratio(int step) {
        return FASTEST_OF_SPAN * Math.pow(SLOWEST_OF_SPAN / FASTEST_OF_SPAN, step / (GRID - 1.0));
    }

    private static double[] linear(double[][] columns, double[] values) {
        DecompositionSolver solver = new QRDecomposition(new Array2DRowRealMatrix(columns), SINGULAR).getSolver();
        return solver.isNonSingular()
                ? solver.solve(new ArrayRealVector(values, false)).toArray()
                : new double[0];
    }

    private static double squares(double[][] columns, double[] linear, double[] values) {
        double sum = 0;
        for (int i = 0; i < values.length; i++) {
            double residual = values[i];
            for (int j = 0; j < linear.length; j++) {
                residual -= columns[i][j] * linear[j];
            }
            sum += residual * residual;
        }
        return sum;
    }

    /** Returns the small-sample criterion of Akaike for normal errors of unknown size, which counts as a parameter. */
    double aicc() {
        double count = result.parameters().length + 1.0;
        double smallest = Double.MIN_NORMAL;
        return readingCount * Math.log(Math.max(smallest, result.rss()) / readingCount)
                + 2 * count
                + 2 * count * (count + 1) / (readingCount - count - 1);
    }

    double noiseKelvin() {
        return result.residualStandardDeviation();
    }

    double slowestTauSeconds() {
        double slowest = 0;
        for (int stage = 0; stage < stageCount; stage++) {
            slowest = Math.max(slowest, Math.exp(result.parameter(curve.stageAt(stage))));
        }
        return slowest;
    }

    /** Returns whether every time constant and resistance is known to within a factor. */
    boolean certain(double widestLogarithm) {
        for (int stage = 0; stage < stageCount; stage++) {
            int at = curve.stageAt(stage);
            for (int i = at; i < at + (curve.heated() ? 2 : 1); i++) {
                if (result.estimate(i).expandedUncertainty(0.95) > widestLogarithm) {
                    return false;
                }
            }
        }
        return true;
    }

    double[] celsius() {
        double[] celsius = new double[readingCount];
        for (int i = 0; i < readingCount; i++) {
            celsius[i] = curve.value(result.parameters(), new double[] {i});
        }
        return celsius;
    }

    Optional<FittedFigure> airCelsius() {
        return curve.findsAir() ? Optional.of(FittedFigure.of(result.estimate(0))) : Optional.empty();
    }

    /** Returns the stages, fastest first. */
    List<HeatFit.Stage> stages() {
        List<HeatFit.Stage> stages = new ArrayList<>();
        for (int stage = 0; stage < stageCount; stage++) {
            int at = curve.stageAt(stage);
            FittedFigure tau = FittedFigure.ofLogarithm(result.estimate(at));
            if (curve.heated()) {
                double[] capacity = new double[curve.parameterCount()];
                capacity[at] = 1;
                capacity[at + 1] = -1;
                double logarithm = result.parameter(at) - result.parameter(at + 1);
                stages.add(new HeatFit.Stage(
                        tau,
                        Optional.of(FittedFigure.ofLogarithm(result.estimate(at + 1))),
                        Optional.of(FittedFigure.ofLogarithm(estimate(logarithm, capacity)))));
            } else {
                stages.add(new HeatFit.Stage(tau, Optional.empty(), Optional.empty()));
            }
        }
        stages.sort(Comparator.comparingDouble(stage -> stage.tauSeconds().value()));
        return stages;
    }

    /** Returns the resistance of all stages together, or empty when nothing heated. */
    Optional<FittedFigure> kelvinPerWatt() {
        if (!curve.heated()) {
            return Optional.empty();
        }
        double[] slopes = new double[curve.parameterCount()];
        double sum = 0;
        for (int stage = 0; stage < stageCount; stage++) {
            int at = curve.stageAt(stage) + 1;
            slopes[at] = Math.exp(result.parameter(at));
            sum += slopes[at];
        }
        for (int i = 0; i < slopes.length; i++) {
            slopes[i] /= sum;
        }
        return Optional.of(FittedFigure.ofLogarithm(estimate(Math.log(sum), slopes)));
    }

    private Estimate estimate(double value, double[] slopes) {
        double variance = Math.max(0, result.covariance().varianceOf(slopes));
        return new Estimate(value, Math.sqrt(variance), result.degreesOfFreedom());
    }
}
