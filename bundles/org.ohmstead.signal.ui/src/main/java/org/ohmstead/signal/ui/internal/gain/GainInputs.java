// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.gain;

import java.util.OptionalDouble;
import org.ohmstead.signal.gain.GainSetup;
import org.ohmstead.signal.gain.GainTarget;
import org.ohmstead.signal.gain.MeterCheck;

/**
 * What the fields of the gain set-up hold.
 *
 * @param fullScaleVoltsRms of the source
 * @param overlapDb the gain overlap
 * @param target the end point
 * @param clipWatts where the amplifier clips, when that is not the end point
 * @param checkDb the level relative to the end point at which the gain is set, at most 0
 */
record GainInputs(
        double fullScaleVoltsRms, double overlapDb, GainTarget target, OptionalDouble clipWatts, double checkDb) {
    /** Before anything is typed or opened. */
    static final GainInputs USUAL =
            new GainInputs(2, GainSetup.USUAL_OVERLAP_DB, new GainTarget(50, 4, false), OptionalDouble.empty(), -20);

    GainSetup setup() {
        return new GainSetup(fullScaleVoltsRms, overlapDb, target, clipWatts);
    }

    MeterCheck check() {
        return setup().checkAt(checkDb);
    }
}
