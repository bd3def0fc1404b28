// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import org.ohmstead.signal.FrequencyWeighting;

/**
 * What a sound level meter would show of a recording. All levels are in dB re 20 micropascals.
 *
 * @param weighting frequency weighting of the first five
 * @param equivalentDb Leq: level of the mean squared pressure over all that was evaluated
 * @param exposureDb sound exposure level: the same energy within 1 s
 * @param highestFastDb highest level with time weighting F
 * @param highestSlowDb highest level with time weighting S
 * @param lastSlowDb level with time weighting S at the end
 * @param peakCDb level of the highest C-weighted instantaneous pressure, between samples too
 * @param durationSeconds how long a part of the recording was evaluated, above 0
 */
public record SoundLevels(
        FrequencyWeighting weighting,
        double equivalentDb,
        double exposureDb,
        double highestFastDb,
        double highestSlowDb,
        double lastSlowDb,
        double peakCDb,
        double durationSeconds) {
    public SoundLevels {
        Checks.given("weighting", weighting);
        Checks.finite("equivalentDb", equivalentDb);
        Checks.finite("exposureDb", exposureDb);
        Checks.finite("highestFastDb", highestFastDb);
        Checks.finite("highestSlowDb", highestSlowDb);
        Checks.finite("lastSlowDb", lastSlowDb);
        Checks.finite("peakCDb", peakCDb);
        Checks.positive("durationSeconds", durationSeconds);
    }
}
