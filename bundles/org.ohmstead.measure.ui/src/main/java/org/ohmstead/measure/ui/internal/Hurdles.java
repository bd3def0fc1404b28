// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.Optional;

/** What keeps anything from being run. */
final class Hurdles {
    static final String RELEASE_FIRST = "Release the emergency stop first.";

    private Hurdles() {}

    /** Returns the first that is in the way, and what to do; empty when nothing is. */
    static Optional<String> of(RunDesk runs) {
        Optional<String> early = runs.stage().obstacle();
        if (early.isPresent()) {
            return early;
        }
        if (runs.halted()) {
            return Optional.of(RELEASE_FIRST);
        }
        String driver = runs.choices().driverId();
        if (driver.isEmpty()) {
            return Optional.of("Choose a bench first.");
        }
        if (RunWords.needsBench(runs)) {
            return Optional.of(
                    "The bench driver " + driver + " is not there. Install its plug-in, or choose another bench.");
        }
        if (runs.running()) {
            return Optional.of("Something is being measured already.");
        }
        return runs.prepared() ? Optional.empty() : Optional.of("The plan is being prepared.");
    }
}
