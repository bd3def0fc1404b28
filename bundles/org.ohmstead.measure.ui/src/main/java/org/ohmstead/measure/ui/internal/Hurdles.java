// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.Optional;
import org.ohmstead.units.text.Messages;

/** What keeps anything from being run. */
final class Hurdles {
    private static final Messages TEXTS = Messages.of(Hurdles.class);

    private Hurdles() {}

    /** Returns what to do before anything else when the emergency stop is pressed. */
    static String releaseFirst() {
        return TEXTS.text("hurdle.release");
    }

    /** Returns the first that is in the way, and what to do; empty when nothing is. */
    static Optional<String> of(RunDesk runs) {
        Optional<String> early = runs.stage().obstacle();
        if (early.isPresent()) {
            return early;
        }
        if (runs.halted()) {
            return Optional.of(releaseFirst());
        }
        String driver = runs.choices().driverId();
        if (driver.isEmpty()) {
            return Optional.of(TEXTS.text("hurdle.bench"));
        }
        if (RunWords.needsBench(runs)) {
            return Optional.of(TEXTS.text("hurdle.driver", driver));
        }
        if (runs.running()) {
            return Optional.of(TEXTS.text("hurdle.running"));
        }
        return runs.prepared() ? Optional.empty() : Optional.of(TEXTS.text("hurdle.preparing"));
    }
}
