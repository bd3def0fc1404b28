// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.curves.internal.Checks;
import org.ohmstead.curves.internal.Readings;
import org.ohmstead.metrology.Contribution;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.metrology.UncertaintyBudget;
import org.ohmstead.units.text.Messages;

/**
 * What is left when all readings were taken at one supply voltage: the mean power there, scaled with the square of the
 * supply voltage. That is right only for an output stage that loses nothing. One that loses a fixed voltage follows
 * ((V - V_0)/(V_mean - V_0))², which grows faster; the difference for V_0 = {@value #PLAUSIBLE_OFFSET_VOLTS} V (common
 * practice, no source) is taken as the half width of a rectangular distribution and goes into every uncertainty. A
 * regulated amplifier follows neither; the readings cannot tell, and no uncertainty covers it.
 *
 * @param points the readings
 * @param loadOhms the load, greater than 0
 * @param meanSupplyVolts the supply voltage of the readings, greater than 0
 * @param meanPowerWatts the mean power there (weighted by 1/u²) with its uncertainty, greater than 0
 * @param birgeRatio how much larger the scatter is than the readings' uncertainties explain; absent with one reading
 */
public record SquareLawFallback(
        List<PowerPoint> points,
        double loadOhms,
        double meanSupplyVolts,
        Estimate meanPowerWatts,
        OptionalDouble birgeRatio)
        implements PowerCurve {
    private static final Messages TEXTS = Messages.of(SquareLawFallback.class);

    /**
     * The largest supply voltage below which an output stage plausibly gives nothing, in volts (common practice, no
     * source).
     */
    public static final double PLAUSIBLE_OFFSET_VOLTS = 2;

    /** Returns the label that goes with every figure from this curve. */
    public static String note() {
        return TEXTS.text("squareLaw.note");
    }

    /** Keeps the plausible offset well below the supply for systems of less than 8 V. */
    private static final double LARGEST_PART_OF_SUPPLY = 0.25;

    /** Checks the ranges given above. */
    public SquareLawFallback {
        points = List.copyOf(points);
        Readings.requireSome(points);
        Checks.positive("loadOhms", loadOhms);
        Checks.positive("meanSupplyVolts", meanSupplyVolts);
        Checks.positive("meanPowerWatts", meanPowerWatts.value());
    }

    @Override
    public Prediction predict(double supplyVolts) {
        double ratio = ratio(meanSupplyVolts, Checks.positive("supplyVolts", supplyVolts));
        double powerWatts = meanPowerWatts.value() * ratio;
        double modelWatts = meanPowerWatts.value() * modelUncertainty(meanSupplyVolts, supplyVolts);
        Estimate curve = UncertaintyBudget.of(
                        powerWatts,
                        Contribution.of("readings", ratio, meanPowerWatts),
                        new Contribution("squareLaw", 1, modelWatts, Double.POSITIVE_INFINITY))
                .combined();
        double scatter = Readings.relativeScatter(points, birgeRatio) * powerWatts;
        return new Prediction(
                supplyVolts,
                powerWatts,
                curve.standardUncertainty(),
                Math.hypot(curve.standardUncertainty(), scatter),
                curve.degreesOfFreedom(),
                Readings.extrapolationVolts(points, supplyVolts));
    }

    @Override
    public OptionalDouble supplyVoltsFor(double powerWatts) {
        Checks.positive("powerWatts", powerWatts);
        return OptionalDouble.of(meanSupplyVolts * Math.sqrt(powerWatts / meanPowerWatts.value()));
    }

    @Override
    public PowerPoint normalize(PowerPoint point, double toSupplyVolts) {
        double ratio = ratio(point.supplyVolts(), Checks.positive("toSupplyVolts", toSupplyVolts));
        double modelWatts = point.powerWatts() * modelUncertainty(point.supplyVolts(), toSupplyVolts);
        return new PowerPoint(
                toSupplyVolts,
                point.powerWatts() * ratio,
                Math.hypot(point.standardUncertaintyWatts() * ratio, modelWatts),
                point.label());
    }

    @Override
    public double percentPerVolt(double supplyVolts) {
        return 200 / Checks.positive("supplyVolts", supplyVolts);
    }

    @Override
    public String describe() {
        return TEXTS.text("squareLaw.describe", Figures.of("%.1f", meanSupplyVolts), note());
    }

    private static double ratio(double fromVolts, double toVolts) {
        return (toVolts / fromVolts) * (toVolts / fromVolts);
    }

    /** Returns the standard uncertainty of the ratio from one voltage to another that an unknown offset causes. */
    private static double modelUncertainty(double fromVolts, double toVolts) {
        double offset = Math.min(PLAUSIBLE_OFFSET_VOLTS, LARGEST_PART_OF_SUPPLY * fromVolts);
        double withOffset = ratio(fromVolts - offset, Math.max(0, toVolts - offset));
        return Estimate.rectangular(0, Math.abs(withOffset - ratio(fromVolts, toVolts)))
                .standardUncertainty();
    }
}
