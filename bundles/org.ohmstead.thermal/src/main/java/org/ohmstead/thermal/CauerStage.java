// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/**
 * One stage of a Cauer ladder: a body's heat capacity, and the resistance from it to the next body.
 *
 * @param kelvinPerWatt resistance to the next body or to the air, above 0
 * @param joulesPerKelvin heat capacity, above 0
 */
public record CauerStage(double kelvinPerWatt, double joulesPerKelvin) {
    public CauerStage {
        Checks.positive(kelvinPerWatt, "kelvinPerWatt");
        Checks.positive(joulesPerKelvin, "joulesPerKelvin");
    }
}
