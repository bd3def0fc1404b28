// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.internal;

import java.util.OptionalDouble;
import org.ohmstead.curves.study.SupplyModel;
import org.ohmstead.thermal.StageLoad;

/** An amplifier as the study of power against supply volts sees one, and its power with a sine just below clipping. */
final class SamplePower {
    private final SupplyModel model;

    /**
     * Makes an amplifier whose peak volts follow the supply, g V - V_s before its output resistance.
     *
     * @param gainRatio g, peak volts for a volt of supply
     * @param saturationVolts V_s
     * @param outputOhms between its inner volts and its terminals
     */
    SamplePower(double gainRatio, double saturationVolts, double outputOhms) {
        this(new SupplyModel.Unregulated(gainRatio, saturationVolts, OptionalDouble.of(outputOhms)));
    }

    SamplePower(SupplyModel model) {
        this.model = model;
    }

    double peakVolts(double supplyVolts, double loadOhms) {
        return model.peakVolts(supplyVolts, loadOhms);
    }

    double watts(double supplyVolts, double loadOhms) {
        return StageLoad.resistor(loadOhms).watts(peakVolts(supplyVolts, loadOhms) / Math.sqrt(2));
    }

    /** Returns the power of two such channels with a load between their outputs, each seeing half of it. */
    double bridgedWatts(double supplyVolts, double loadOhms) {
        return 2 * watts(supplyVolts, loadOhms / 2);
    }
}
