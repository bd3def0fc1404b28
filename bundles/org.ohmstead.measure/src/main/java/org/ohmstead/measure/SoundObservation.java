// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

import java.time.Instant;
import java.util.OptionalDouble;
import org.ohmstead.signal.FrequencyWeighting;

/**
 * A sound level that was read. Only the level is handed over: a microphone's recording is not one of the amplifier's output, and is not
 * kept with those.
 *
 * @param at when
 * @param levelDb equivalent level in dB re 20 micropascals
 * @param weighting by which it was weighted
 * @param standardUncertaintyDb of meter or microphone by itself (k = 1), at least 0; empty when the bench does not know it
 */
public record SoundObservation(
        Instant at, double levelDb, FrequencyWeighting weighting, OptionalDouble standardUncertaintyDb) {
    public SoundObservation {
        Checks.present(at, "at");
        Checks.finite(levelDb, "levelDb");
        Checks.present(weighting, "weighting");
        Checks.present(standardUncertaintyDb, "standardUncertaintyDb")
                .ifPresent(u -> Checks.notNegative(u, "standardUncertaintyDb"));
    }
}
