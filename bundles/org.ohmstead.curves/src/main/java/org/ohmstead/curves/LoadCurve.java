// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import java.util.List;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;

/**
 * Power against supply voltage of one channel, for one kind of power, mode, load and end point.
 *
 * @param kind steady tone or burst
 * @param mode how the channels met the load
 * @param nominalLoadOhms the value the load stands for; the points' powers are for exactly this resistance
 * @param channel which channel
 * @param endPoint what ended the search for power
 * @param frequencyHz of the tone
 * @param points the readings; their uncertainty holds only what is each reading's own
 * @param sharedRelativeUncertainty relative standard uncertainty of power that all points have in common (same meters,
 *     same load) and that the fit therefore cannot average out
 * @param curve the fitted curve
 */
public record LoadCurve(
        PowerKind kind,
        Mode mode,
        double nominalLoadOhms,
        String channel,
        EndPoint endPoint,
        double frequencyHz,
        List<PowerPoint> points,
        double sharedRelativeUncertainty,
        PowerCurve curve) {
    public LoadCurve {
        points = List.copyOf(points);
    }

    /** Returns a point's standard uncertainty in watts, own and shared parts together. */
    public double totalStandardUncertaintyWatts(PowerPoint point) {
        return Math.hypot(point.standardUncertaintyWatts(), sharedRelativeUncertainty * point.powerWatts());
    }

    /**
     * Returns the power at a supply voltage with its whole uncertainty: that of the curve and the shared one, with
     * effective degrees of freedom by Welch and Satterthwaite (GUM G.4).
     *
     * @param supplyVolts direct volts at the amplifier's terminals, above 0
     */
    public Estimate powerAt(double supplyVolts) {
        Prediction prediction = curve.predict(supplyVolts);
        double ownWatts = prediction.standardUncertaintyWatts();
        double totalWatts = Math.hypot(ownWatts, sharedRelativeUncertainty * prediction.powerWatts());
        double share = totalWatts > 0 ? ownWatts / totalWatts : 0;
        double degrees = share > 0 ? prediction.degreesOfFreedom() / Math.pow(share, 4) : Double.POSITIVE_INFINITY;
        return new Estimate(prediction.powerWatts(), totalWatts, degrees);
    }
}
