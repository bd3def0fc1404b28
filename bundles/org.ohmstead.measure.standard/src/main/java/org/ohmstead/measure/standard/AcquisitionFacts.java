// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.Locale;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.model.CaptureUsed;

/** Names an acquisition by its content. */
final class AcquisitionFacts {
    private AcquisitionFacts() {}

    /**
     * Returns what is kept of an acquisition, named by the hash of its content until the engine knows its file.
     *
     * @param number which recording of the run it was, from 1
     */
    static LevelFacts of(Acquisition acquisition, int number) {
        return new LevelFacts(
                new CaptureUsed(
                        acquisition.output().contentSha256(),
                        String.format(Locale.ROOT, "recording-%02d", number),
                        acquisition.voltsPerFullScale()),
                acquisition.during().caseCelsius(),
                acquisition.during().ambientCelsius(),
                acquisition.during().at());
    }
}
