// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

/**
 * One of several sounds of the same frequency that meet at a point.
 *
 * @param levelDb its own level, in dB
 * @param phaseDegrees its phase against any common reference
 */
public record Phasor(double levelDb, double phaseDegrees) {
    public Phasor {
        Checks.finite("levelDb", levelDb);
        Checks.finite("phaseDegrees", phaseDegrees);
    }
}
