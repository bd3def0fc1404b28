// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/**
 * The level at which a stage gives off the most heat.
 *
 * @param outputVoltsRms RMS volts at the load
 * @param split where the power goes there
 */
public record WorstLevel(double outputVoltsRms, PowerSplit split) {
    public WorstLevel {
        Checks.notNegative(outputVoltsRms, "outputVoltsRms");
        Checks.present(split, "split");
    }
}
