// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.OptionalDouble;

/**
 * Where the power of a whole amplifier goes.
 *
 * @param outputWatts into the loads
 * @param stageWatts heat of the output stages
 * @param converterWatts heat of the converter
 * @param otherWatts heat of everything else, such as what it takes idle
 */
public record AmplifierBalance(double outputWatts, double stageWatts, double converterWatts, double otherWatts) {
    public AmplifierBalance {
        Checks.finite(outputWatts, "outputWatts");
        Checks.finite(stageWatts, "stageWatts");
        Checks.finite(converterWatts, "converterWatts");
        Checks.finite(otherWatts, "otherWatts");
    }

    /** Returns what the amplifier turns into heat, in watts. */
    public double heatWatts() {
        return stageWatts + converterWatts + otherWatts;
    }

    /** Returns what it takes from the supply, in watts. */
    public double supplyWatts() {
        return outputWatts + heatWatts();
    }

    /** Returns output over input, or empty when nothing goes in. */
    public OptionalDouble efficiencyRatio() {
        return supplyWatts() > 0 ? OptionalDouble.of(outputWatts / supplyWatts()) : OptionalDouble.empty();
    }

    /** Returns the average current from the supply in amperes at some volts above 0. */
    public double supplyAmps(double supplyVolts) {
        return supplyWatts() / Checks.positive(supplyVolts, "supplyVolts");
    }
}
