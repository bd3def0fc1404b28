// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.curves.internal.Checks;
import org.ohmstead.curves.internal.PeakPower;
import org.ohmstead.curves.internal.Readings;
import org.ohmstead.metrology.Covariance;
import org.ohmstead.units.text.Messages;

/**
 * A curve with the peak output voltage on a straight line: V_peak = slope V_supply - offset, P = V_peak²/(2R), V_peak
 * at least 0. With the output stage V_peak = (g V_supply - V_s) R/(R + R_s) the line has the slope g R/(R + R_s) and
 * offset = V_s R/(R + R_s); one load alone cannot separate g, V_s and R_s. In bridged mode R is the whole load and the
 * two parameters belong to the pair of channels.
 *
 * @param points the readings
 * @param loadOhms the load R, greater than 0
 * @param slopeRatio peak output volts per supply volt; near 0 if the amplifier's own supply is regulated
 * @param offsetVolts the peak volts lost; negative if the amplifier's own supply is regulated
 * @param covariance the covariance matrix of slope and offset, in this order; already scaled, see {@link PowerCurveFit}
 * @param degreesOfFreedom how well the uncertainties are known; infinite if they come from the readings' own
 *     uncertainties
 * @param birgeRatio how much larger the scatter about the curve is than the readings' uncertainties explain; absent if
 *     the curve passes through every reading by necessity
 */
public record SaturationCurve(
        List<PowerPoint> points,
        double loadOhms,
        double slopeRatio,
        double offsetVolts,
        Covariance covariance,
        double degreesOfFreedom,
        OptionalDouble birgeRatio)
        implements PowerCurve {
    private static final Messages TEXTS = Messages.of(SaturationCurve.class);

    /** Below this part of the square law's growth the amplifier is called regulated; a choice of this program. */
    private static final double REGULATED_BELOW = 0.2;

    /** Above this part of the square law's growth the amplifier is called unregulated; a choice of this program. */
    private static final double UNREGULATED_ABOVE = 0.7;

    /** If the growth is less certain than this part of the square law's, nothing is said; a choice of this program. */
    private static final double TOO_UNCERTAIN = 0.25;

    private static final double CLEARLY_POSITIVE = 2;

    /** Checks the ranges given above. */
    public SaturationCurve {
        points = List.copyOf(points);
        Readings.requireSome(points);
        Checks.positive("loadOhms", loadOhms);
        Checks.finite("slopeRatio", slopeRatio);
        Checks.finite("offsetVolts", offsetVolts);
        if (covariance.size() != 2) {
            throw new IllegalArgumentException(
                    "covariance has " + covariance.size() + " rows but must have 2, for slope and offset.");
        }
    }

    /** Returns the peak output voltage at a supply voltage; 0 where the line is below zero. */
    public double peakVolts(double supplyVolts) {
        Checks.positive("supplyVolts", supplyVolts);
        return Math.max(0, slopeRatio * supplyVolts - offsetVolts);
    }

    @Override
    public Prediction predict(double supplyVolts) {
        double peakVolts = peakVolts(supplyVolts);
        double peakVariance = covariance.varianceOf(supplyVolts, -1);
        double powerWatts = PeakPower.watts(peakVolts, loadOhms);
        double uncertainty = PeakPower.standardUncertaintyWatts(peakVolts, peakVariance, loadOhms);
        double scatter = Readings.relativeScatter(points, birgeRatio) * powerWatts;
        return new Prediction(
                supplyVolts,
                powerWatts,
                uncertainty,
                Math.hypot(uncertainty, scatter),
                degreesOfFreedom,
                Readings.extrapolationVolts(points, supplyVolts));
    }

    @Override
    public OptionalDouble supplyVoltsFor(double powerWatts) {
        Checks.positive("powerWatts", powerWatts);
        double volts = (Math.sqrt(2 * loadOhms * powerWatts) + offsetVolts) / slopeRatio;
        boolean rises = slopeRatio > CLEARLY_POSITIVE * covariance.standardUncertainty(0);
        return rises && Double.isFinite(volts) && volts > 0 ? OptionalDouble.of(volts) : OptionalDouble.empty();
    }

    @Override
    public PowerPoint normalize(PowerPoint point, double toSupplyVolts) {
        double from = powerfulPeakVolts(point.supplyVolts());
        double to = powerfulPeakVolts(toSupplyVolts);
        double ratio = (to / from) * (to / from);
        // d(ln ratio) = 2 (dV_to/V_to - dV_from/V_from), both on the same line.
        double variance =
                covariance.varianceOf(2 * (toSupplyVolts / to - point.supplyVolts() / from), 2 * (1 / from - 1 / to));
        double ownRelative = point.standardUncertaintyWatts() / point.powerWatts();
        double powerWatts = point.powerWatts() * ratio;
        return new PowerPoint(
                toSupplyVolts,
                powerWatts,
                powerWatts * Math.sqrt(ownRelative * ownRelative + Math.max(0, variance)),
                point.label());
    }

    @Override
    public double percentPerVolt(double supplyVolts) {
        return 200 * slopeRatio / powerfulPeakVolts(supplyVolts);
    }

    @Override
    public String describe() {
        double middle = (lowestSupplyVolts() + highestSupplyVolts()) / 2;
        if (peakVolts(middle) <= 0) {
            return TEXTS.text("saturation.noPower");
        }
        double percent = percentPerVolt(middle);
        double squareLawPercent = 200 / middle;
        if (percentUncertainty(middle) > TOO_UNCERTAIN * squareLawPercent) {
            return TEXTS.text(
                    "saturation.uncertain",
                    Figures.of("%.1f", middle),
                    Figures.of("%.0f", percent),
                    Figures.of("%.0f", percentUncertainty(middle)));
        }
        if (percent < REGULATED_BELOW * squareLawPercent) {
            return TEXTS.text("saturation.regulated", Figures.of("%.1f", middle), Figures.of("%+.1f", percent));
        }
        String key = percent > UNREGULATED_ABOVE * squareLawPercent
                ? "saturation.unregulated"
                : "saturation.partlyRegulated";
        return TEXTS.text(key, Figures.of("%.1f", middle), Figures.of("%.0f", percent));
    }

    private double percentUncertainty(double supplyVolts) {
        double peak = powerfulPeakVolts(supplyVolts);
        // d(slope/peak) with peak = slope V - offset.
        double variance = covariance.varianceOf(-offsetVolts / (peak * peak), slopeRatio / (peak * peak));
        return 200 * Math.sqrt(Math.max(0, variance));
    }

    private double powerfulPeakVolts(double supplyVolts) {
        double peak = peakVolts(supplyVolts);
        if (peak <= 0) {
            throw new IllegalArgumentException("supplyVolts is " + supplyVolts
                    + " but the curve gives power only " + (slopeRatio > 0 ? "above " : "below ")
                    + offsetVolts / slopeRatio
                    + " V.");
        }
        return peak;
    }
}
