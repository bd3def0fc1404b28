// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

/**
 * A level that lasted for some time.
 *
 * @param levelDb equivalent level over that time, in dB
 * @param seconds how long, above 0
 */
public record TimedLevel(double levelDb, double seconds) {
    public TimedLevel {
        Checks.finite("levelDb", levelDb);
        Checks.positive("seconds", seconds);
    }
}
