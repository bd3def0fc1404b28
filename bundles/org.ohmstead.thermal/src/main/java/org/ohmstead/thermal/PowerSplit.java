// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.OptionalDouble;

/**
 * Where the power of a stage goes.
 *
 * @param outputWatts into the load
 * @param inputWatts into the stage, at least {@code outputWatts} but for rounding
 */
public record PowerSplit(double outputWatts, double inputWatts) {
    public PowerSplit {
        Checks.finite(outputWatts, "outputWatts");
        Checks.finite(inputWatts, "inputWatts");
    }

    /** Returns what turns into heat, in watts. */
    public double lossWatts() {
        return inputWatts - outputWatts;
    }

    /** Returns output over input, or empty when nothing goes in. */
    public OptionalDouble efficiencyRatio() {
        return inputWatts > 0 ? OptionalDouble.of(outputWatts / inputWatts) : OptionalDouble.empty();
    }

    /** Returns so many of these side by side, such as the channels of an amplifier. */
    public PowerSplit times(double count) {
        Checks.notNegative(count, "count");
        return new PowerSplit(count * outputWatts, count * inputWatts);
    }
}
