// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import java.util.List;
import java.util.OptionalDouble;

/** Power as a function of supply voltage for one load, one mode and one end point. Made by {@link PowerCurveFit}. */
public sealed interface PowerCurve permits SaturationCurve, SquareLawFallback {

    /** Returns the readings behind the curve, in the order given. */
    List<PowerPoint> points();

    /**
     * Returns the load resistance in ohms, as it is connected (in bridged mode the whole load between the two outputs).
     */
    double loadOhms();

    /**
     * Returns what the curve says about a supply voltage (greater than 0). Far outside the readings the model itself
     * may fail.
     */
    Prediction predict(double supplyVolts);

    /**
     * Returns the supply voltage at which the curve reaches a power, or nothing if no positive voltage does or if the
     * readings do not show that power rises with the supply.
     *
     * @param powerWatts the power wanted, greater than 0
     */
    OptionalDouble supplyVoltsFor(double powerWatts);

    /**
     * Returns the reading as it would have been at another supply voltage: moved along the curve in proportion,
     * P x curve(to)/curve(from), with the uncertainty of that proportion added to its own. The reading need not be one
     * of the curve's; if it is, the uncertainties are combined as if it were not.
     *
     * @param point the reading
     * @param toSupplyVolts the other voltage, greater than 0
     * @throws IllegalArgumentException if the curve gives no power at one of the two voltages
     */
    PowerPoint normalize(PowerPoint point, double toSupplyVolts);

    /**
     * Returns by how many percent the power grows per volt at a supply voltage, 100 dP/dV / P.
     *
     * @throws IllegalArgumentException if the curve gives no power at this voltage
     */
    double percentPerVolt(double supplyVolts);

    /** Returns in one or two plain sentences how the power depends on the supply. */
    String describe();

    /** Returns the lowest supply voltage of the readings. */
    default double lowestSupplyVolts() {
        return points().stream().mapToDouble(PowerPoint::supplyVolts).min().orElseThrow();
    }

    /** Returns the highest supply voltage of the readings. */
    default double highestSupplyVolts() {
        return points().stream().mapToDouble(PowerPoint::supplyVolts).max().orElseThrow();
    }
}
