// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.curves.internal.BirgeAdjusted;
import org.ohmstead.curves.internal.Checks;
import org.ohmstead.curves.internal.OutputStageModel;
import org.ohmstead.curves.internal.PeakPower;
import org.ohmstead.curves.internal.Readings;
import org.ohmstead.metrology.Covariance;
import org.ohmstead.metrology.CovarianceBasis;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.metrology.FitException;
import org.ohmstead.metrology.FitResult;
import org.ohmstead.metrology.LinearFit;
import org.ohmstead.metrology.NonlinearFit;
import org.ohmstead.metrology.Observation;
import org.ohmstead.units.text.Messages;

/**
 * One output stage seen through readings into several loads: V_peak = (g V_supply - V_s) R/(R + R_s) per channel, P =
 * V_peak²/(2R) per channel. A bridged load is two channels in series, each with half of it: P_bridged(R) = 2
 * P_channel(R/2).
 */
public sealed interface JointFit {
    Messages TEXTS = Messages.of(JointFit.class);

    /** Loads per channel that differ by less than this ratio count as one load (a choice of this program). */
    double SMALLEST_LOAD_RATIO = 1.05;

    /**
     * The output stage, with all three parameters told apart.
     *
     * @param points the readings
     * @param gainRatio g, peak output volts per supply volt without load
     * @param saturationVolts V_s, the peak volts lost without load
     * @param outputOhms R_s, the source resistance of one channel including its share of the internal supply's;
     *     slightly negative values can come from scatter
     * @param covariance the covariance matrix of g, V_s, R_s, in this order; already scaled, see {@link PowerCurveFit}
     * @param degreesOfFreedom how well the uncertainties are known; infinite if they come from the readings' own
     *     uncertainties
     * @param birgeRatio how much larger the scatter is than the readings' uncertainties explain; absent with three
     *     readings
     */
    record OutputStage(
            List<LoadedPoint> points,
            double gainRatio,
            double saturationVolts,
            double outputOhms,
            Covariance covariance,
            double degreesOfFreedom,
            OptionalDouble birgeRatio)
            implements JointFit {

        /** Checks the ranges given above. */
        public OutputStage {
            points = List.copyOf(points);
            Checks.finite("gainRatio", gainRatio);
            Checks.finite("saturationVolts", saturationVolts);
            Checks.finite("outputOhms", outputOhms);
            if (covariance.size() != 3) {
                throw new IllegalArgumentException("covariance has " + covariance.size() + " rows but must have 3.");
            }
        }

        /** Returns g with its uncertainty. */
        public Estimate gainEstimate() {
            return new Estimate(gainRatio, covariance.standardUncertainty(0), degreesOfFreedom);
        }

        /** Returns V_s with its uncertainty, in volts. */
        public Estimate saturationVoltsEstimate() {
            return new Estimate(saturationVolts, covariance.standardUncertainty(1), degreesOfFreedom);
        }

        /** Returns R_s with its uncertainty, in ohms. */
        public Estimate outputOhmsEstimate() {
            return new Estimate(outputOhms, covariance.standardUncertainty(2), degreesOfFreedom);
        }

        /**
         * Returns the power into a load at a supply voltage, with uncertainty. Extrapolation is told for the voltage
         * only, not for the load.
         *
         * @param supplyVolts the supply voltage, greater than 0
         * @param loadOhms the load as connected, greater than 0
         * @param bridged whether two channels drive it together
         * @throws IllegalArgumentException if the load per channel is so low that a negative R_s cancels it
         */
        public Prediction predict(double supplyVolts, double loadOhms, boolean bridged) {
            Checks.positive("supplyVolts", supplyVolts);
            double channelOhms = Checks.positive("loadOhms", loadOhms) / (bridged ? 2 : 1);
            double totalOhms = channelOhms + outputOhms;
            if (totalOhms <= 0) {
                throw new IllegalArgumentException("loadOhms is " + loadOhms + " but each channel must see more than "
                        + -outputOhms + " ohm, because the fitted source resistance is negative.");
            }
            double share = channelOhms / totalOhms;
            double openVolts = gainRatio * supplyVolts - saturationVolts;
            double peakVolts = Math.max(0, openVolts * share);
            double variance = covariance.varianceOf(share * supplyVolts, -share, -peakVolts / totalOhms);
            int channels = bridged ? 2 : 1;
            double powerWatts = channels * PeakPower.watts(peakVolts, channelOhms);
            double uncertainty = channels * PeakPower.standardUncertaintyWatts(peakVolts, variance, channelOhms);
            List<PowerPoint> readings = points.stream().map(LoadedPoint::point).toList();
            double scatter = Readings.relativeScatter(readings, birgeRatio) * powerWatts;
            return new Prediction(
                    supplyVolts,
                    powerWatts,
                    uncertainty,
                    Math.hypot(uncertainty, scatter),
                    degreesOfFreedom,
                    Readings.extrapolationVolts(readings, supplyVolts));
        }
    }

    /**
     * The readings do not tell the three parameters apart.
     *
     * @param reason why, and what to do, in whole sentences
     */
    record NotSeparable(String reason) implements JointFit {}

    /**
     * Returns the output stage, or why the readings do not determine it.
     *
     * @param points the readings, of one amplifier and one end point
     */
    static JointFit fit(List<LoadedPoint> points) {
        OptionalDouble lowestOhms =
                points.stream().mapToDouble(LoadedPoint::channelOhms).min();
        OptionalDouble highestOhms =
                points.stream().mapToDouble(LoadedPoint::channelOhms).max();
        if (points.size() < 3) {
            return new NotSeparable(TEXTS.text("joint.tooFew", Integer.toString(points.size())));
        }
        if (highestOhms.orElseThrow() / lowestOhms.orElseThrow() < SMALLEST_LOAD_RATIO) {
            return new NotSeparable(TEXTS.text("joint.oneLoad", Figures.of("%.3g", lowestOhms.orElseThrow())));
        }
        double lowestVolts =
                points.stream().mapToDouble(p -> p.point().supplyVolts()).min().orElseThrow();
        double highestVolts =
                points.stream().mapToDouble(p -> p.point().supplyVolts()).max().orElseThrow();
        if (highestVolts - lowestVolts < PowerCurveFit.SMALLEST_SPAN_VOLTS) {
            return new NotSeparable(TEXTS.text("joint.oneVoltage", Figures.of("%.1f", lowestVolts)));
        }
        try {
            return outputStage(points);
        } catch (FitException exception) {
            return new NotSeparable(exception.getMessage());
        }
    }

    private static OutputStage outputStage(List<LoadedPoint> points) throws FitException {
        List<Observation> observations = new ArrayList<>();
        double[][] design = new double[points.size()][];
        double[] peakVolts = new double[points.size()];
        for (int i = 0; i < peakVolts.length; i++) {
            LoadedPoint loaded = points.get(i);
            PowerPoint point = loaded.point();
            double ohms = loaded.channelOhms();
            double[] conditions = {point.supplyVolts(), ohms, loaded.channels()};
            observations.add(Observation.of(conditions, point.powerWatts(), point.standardUncertaintyWatts()));
            // The model turned round is linear in its parameters: V_peak = g V - V_s - R_s V_peak/R.
            peakVolts[i] = Math.sqrt(2 * ohms * point.powerWatts() / loaded.channels());
            design[i] = new double[] {point.supplyVolts(), -1, -peakVolts[i] / ohms};
        }
        double[] start = LinearFit.of(design, peakVolts).coefficients();
        FitResult result = NonlinearFit.of(new OutputStageModel(), start)
                .withBasis(CovarianceBasis.GIVEN_UNCERTAINTIES)
                .fit(observations);
        BirgeAdjusted adjusted = BirgeAdjusted.of(result);
        return new OutputStage(
                points,
                result.parameter(0),
                result.parameter(1),
                result.parameter(2),
                adjusted.covariance(),
                adjusted.degreesOfFreedom(),
                adjusted.birgeRatio());
    }
}
