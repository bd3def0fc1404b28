// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

import java.util.Objects;
import java.util.Optional;

/**
 * What a sine at the source's full scale asks of the amplifier.
 *
 * @param voltsRms that the load would get if nothing clipped, above 0
 * @param powerWatts that the load would get if nothing clipped, above 0
 * @param beyondEndPointDb how far that lies beyond the end point in dB; below 0 when the end point is not reached
 * @param beyondClipDb how far that lies beyond clipping in dB; below 0 when nothing clips
 * @param clipped how the clipped wave would be, when it clips
 * @param clippedPowerWatts what an ideal amplifier that clips would give, when it clips: up to twice its power at the onset of clipping
 */
public record FullScaleDemand(
        double voltsRms,
        double powerWatts,
        double beyondEndPointDb,
        double beyondClipDb,
        Optional<Overdrive> clipped,
        double clippedPowerWatts) {
    /** Checks that volts and powers are finite and above 0, and levels finite. */
    public FullScaleDemand {
        Checks.positive(voltsRms, "voltsRms");
        Checks.positive(powerWatts, "powerWatts");
        Checks.finite(beyondEndPointDb, "beyondEndPointDb");
        Checks.finite(beyondClipDb, "beyondClipDb");
        Objects.requireNonNull(clipped, "clipped");
        Checks.positive(clippedPowerWatts, "clippedPowerWatts");
    }
}
