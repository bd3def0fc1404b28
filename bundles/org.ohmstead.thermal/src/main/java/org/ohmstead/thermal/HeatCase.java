// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/**
 * One choice of everything that is unknown: what gets warm, what powers come, and the air.
 *
 * @param model what gets warm; all cases of a band have the same points in the same order
 * @param profile the powers
 * @param airCelsius temperature of the air in degrees Celsius
 */
public record HeatCase(HeatModel model, PowerProfile profile, double airCelsius) {
    public HeatCase {
        Checks.present(model, "model");
        Checks.present(profile, "profile");
        Checks.finite(airCelsius, "airCelsius");
    }
}
