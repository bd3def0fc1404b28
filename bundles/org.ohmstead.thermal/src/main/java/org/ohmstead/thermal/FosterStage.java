// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/**
 * One stage of a Foster chain: a thermal resistance with a heat capacity beside it. It warms by P R (1 - e^(-t/tau)).
 *
 * @param kelvinPerWatt its resistance, above 0
 * @param tauSeconds its time constant, above 0
 */
public record FosterStage(double kelvinPerWatt, double tauSeconds) {
    public FosterStage {
        Checks.positive(kelvinPerWatt, "kelvinPerWatt");
        Checks.positive(tauSeconds, "tauSeconds");
    }
}
