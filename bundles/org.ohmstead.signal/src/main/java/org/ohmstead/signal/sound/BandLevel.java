// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import org.ohmstead.signal.FrequencyWeighting;

/**
 * The level of one band.
 *
 * @param centreHz exact middle of the band, in hertz, above 0
 * @param nominalHz the number that it is called by, in hertz, above 0
 * @param levelDb in dB re 20 micropascals
 * @param weighting by which it was weighted
 */
public record BandLevel(double centreHz, double nominalHz, double levelDb, FrequencyWeighting weighting) {
    public BandLevel {
        Checks.positive("centreHz", centreHz);
        Checks.positive("nominalHz", nominalHz);
        Checks.finite("levelDb", levelDb);
        Checks.given("weighting", weighting);
    }
}
