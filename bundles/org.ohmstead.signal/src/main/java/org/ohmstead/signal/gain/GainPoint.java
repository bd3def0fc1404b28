// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

/**
 * What an amplifier gave for what it was fed.
 *
 * @param inputVoltsRms at its input, above 0
 * @param outputVoltsRms at its load, above 0
 */
public record GainPoint(double inputVoltsRms, double outputVoltsRms) {
    /** Checks that both are finite and above 0. */
    public GainPoint {
        Checks.positive(inputVoltsRms, "inputVoltsRms");
        Checks.positive(outputVoltsRms, "outputVoltsRms");
    }
}
