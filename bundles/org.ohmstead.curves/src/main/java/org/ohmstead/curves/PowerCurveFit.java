// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.curves.internal.BirgeAdjusted;
import org.ohmstead.curves.internal.Checks;
import org.ohmstead.curves.internal.PeakPower;
import org.ohmstead.curves.internal.Readings;
import org.ohmstead.metrology.CovarianceBasis;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.metrology.FitException;
import org.ohmstead.metrology.FitModel;
import org.ohmstead.metrology.FitResult;
import org.ohmstead.metrology.LinearFit;
import org.ohmstead.metrology.NonlinearFit;
import org.ohmstead.metrology.Observation;

/**
 * Fits a {@link PowerCurve} through readings by weighted nonlinear least squares on the power itself (weights 1/u²),
 * started from the straight line through sqrt(2RP).
 *
 * <p>The uncertainties are the larger of two: what the readings' own uncertainties give, and the same times the Birge
 * ratio sqrt(chi²/(n-2)), what the scatter about the curve shows (R. T. Birge, Physical Review 40, 1932). In the first
 * case the degrees of freedom are infinite, in the second n-2. With as many readings as parameters only the first
 * exists.
 */
public final class PowerCurveFit {

    /** Readings whose supply voltages span less than this count as taken at one voltage (a choice of this program). */
    public static final double SMALLEST_SPAN_VOLTS = 0.1;

    private PowerCurveFit() {}

    /**
     * Returns the curve: a {@link SaturationCurve} if the readings span at least {@value #SMALLEST_SPAN_VOLTS} V of
     * supply voltage, else a {@link SquareLawFallback}.
     *
     * @param points at least one reading; all of one load, mode and end point
     * @param loadOhms the load as connected, greater than 0
     * @throws IllegalArgumentException if there is no reading, or if the search does not settle because the readings
     *     contradict the model altogether
     */
    public static PowerCurve fit(List<PowerPoint> points, double loadOhms) {
        Readings.requireSome(points);
        Checks.positive("loadOhms", loadOhms);
        double lowest =
                points.stream().mapToDouble(PowerPoint::supplyVolts).min().orElseThrow();
        double highest =
                points.stream().mapToDouble(PowerPoint::supplyVolts).max().orElseThrow();
        return highest - lowest < SMALLEST_SPAN_VOLTS ? fallback(points, loadOhms) : saturation(points, loadOhms);
    }

    private static SaturationCurve saturation(List<PowerPoint> points, double loadOhms) {
        BirgeAdjusted adjusted;
        double[] parameters;
        try {
            LinearFit line = line(points, loadOhms);
            parameters = line.coefficients();
            FitResult result = NonlinearFit.of(new SingleLoad(loadOhms), parameters)
                    .withBasis(CovarianceBasis.GIVEN_UNCERTAINTIES)
                    .fit(observations(points));
            parameters = result.parameters();
            adjusted = BirgeAdjusted.of(result);
        } catch (FitException exception) {
            throw new IllegalArgumentException(
                    "points do not lie near any curve of this model: " + exception.getMessage(), exception);
        }
        return new SaturationCurve(
                points,
                loadOhms,
                parameters[0],
                parameters[1],
                adjusted.covariance(),
                adjusted.degreesOfFreedom(),
                adjusted.birgeRatio());
    }

    private static List<Observation> observations(List<PowerPoint> points) {
        return points.stream()
                .map(point -> Observation.of(point.supplyVolts(), point.powerWatts(), point.standardUncertaintyWatts()))
                .toList();
    }

    private static LinearFit line(List<PowerPoint> points, double loadOhms) throws FitException {
        double[][] design = new double[points.size()][];
        double[] peakVolts = new double[points.size()];
        double[] uncertainties = new double[points.size()];
        for (int i = 0; i < peakVolts.length; i++) {
            PowerPoint point = points.get(i);
            design[i] = new double[] {point.supplyVolts(), -1};
            peakVolts[i] = Math.sqrt(2 * loadOhms * point.powerWatts());
            uncertainties[i] = loadOhms * point.standardUncertaintyWatts() / peakVolts[i];
        }
        return LinearFit.weighted(design, peakVolts, uncertainties, CovarianceBasis.GIVEN_UNCERTAINTIES);
    }

    private static SquareLawFallback fallback(List<PowerPoint> points, double loadOhms) {
        double meanVolts =
                points.stream().mapToDouble(PowerPoint::supplyVolts).average().orElseThrow();
        double weights = 0;
        double weighted = 0;
        for (PowerPoint point : points) {
            double slope = Math.pow(point.supplyVolts() / meanVolts, 2);
            double weight = 1 / point.standardUncertaintyWatts() / point.standardUncertaintyWatts();
            weights += weight * slope * slope;
            weighted += weight * slope * point.powerWatts();
        }
        double meanWatts = weighted / weights;
        Estimate mean = Estimate.of(meanWatts, 1 / Math.sqrt(weights));
        if (points.size() < 2) {
            return new SquareLawFallback(points, loadOhms, meanVolts, mean, OptionalDouble.empty());
        }
        double chiSquared = 0;
        for (PowerPoint point : points) {
            double expected = meanWatts * Math.pow(point.supplyVolts() / meanVolts, 2);
            chiSquared += Math.pow((point.powerWatts() - expected) / point.standardUncertaintyWatts(), 2);
        }
        int freedom = points.size() - 1;
        double ratio = Math.sqrt(chiSquared / freedom);
        if (ratio > 1) {
            mean = new Estimate(meanWatts, ratio / Math.sqrt(weights), freedom);
        }
        return new SquareLawFallback(points, loadOhms, meanVolts, mean, OptionalDouble.of(ratio));
    }

    /** P = max(0, slope V - offset)²/(2R); parameters slope, offset; condition V. */
    private record SingleLoad(double loadOhms) implements FitModel {

        @Override
        public double value(double[] parameters, double[] conditions) {
            return PeakPower.watts(peakVolts(parameters, conditions), loadOhms);
        }

        @Override
        public double[] gradient(double[] parameters, double[] conditions) {
            double amperes = peakVolts(parameters, conditions) / loadOhms;
            return new double[] {amperes * conditions[0], -amperes};
        }

        private static double peakVolts(double[] parameters, double[] conditions) {
            return Math.max(0, parameters[0] * conditions[0] - parameters[1]);
        }
    }
}
