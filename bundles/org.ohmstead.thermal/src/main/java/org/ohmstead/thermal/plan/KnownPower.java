// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.OptionalDouble;

/**
 * What a step is known to give and take, from readings or from a curve through them.
 *
 * @param outputWatts output power in watts, above 0: of each channel in stereo, in the load otherwise; during the burst
 *     where the stimulus is one
 * @param inputWatts mean power taken from the supply in watts, above 0, when it was measured
 */
public record KnownPower(double outputWatts, OptionalDouble inputWatts) {
    public KnownPower {
        Require.positive(outputWatts, "outputWatts");
        Require.present(inputWatts, "inputWatts").ifPresent(value -> Require.positive(value, "inputWatts"));
    }
}
