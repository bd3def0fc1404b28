// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import java.util.OptionalDouble;
import org.ohmstead.signal.FrequencyWeighting;

/**
 * One level that was read: on a meter, or from a recording.
 *
 * @param frequencyHz of the tone or band, in hertz, above 0
 * @param driveDb level of the source below its full output, in dB; empty when it was not noted
 * @param levelDb in dB re 20 micropascals
 * @param weighting frequency weighting that was chosen
 * @param position where the microphone was, in a few words; may be empty
 */
public record SoundPoint(
        double frequencyHz, OptionalDouble driveDb, double levelDb, FrequencyWeighting weighting, String position) {
    public SoundPoint {
        Checks.positive("frequencyHz", frequencyHz);
        Checks.given("driveDb", driveDb).ifPresent(value -> Checks.finite("driveDb", value));
        Checks.finite("levelDb", levelDb);
        Checks.given("weighting", weighting);
        Checks.given("position", position);
    }

    /** Returns whether another point was read under the same conditions: frequency within 0.5 %, drive within 0.05 dB, and weighting. */
    boolean comparableTo(SoundPoint other) {
        boolean sameFrequency = Math.abs(frequencyHz - other.frequencyHz) <= 0.005 * frequencyHz;
        boolean sameDrive = driveDb.isPresent() == other.driveDb.isPresent()
                && Math.abs(driveDb.orElse(0) - other.driveDb.orElse(0)) <= 0.05;
        return sameFrequency && sameDrive && weighting == other.weighting;
    }
}
