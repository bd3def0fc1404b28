// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.Optional;
import org.ohmstead.model.Stimulus;

/**
 * A power during bursts and between them.
 *
 * @param loud in watts
 * @param quiet in watts; as loud for a steady tone
 */
record Pulse(double loud, double quiet) {
    static Pulse steady(double watts) {
        return new Pulse(watts, watts);
    }

    /** Returns the power with a mean and one during the bursts; the mean is raised where the bursts alone have more. */
    static Pulse ofMean(double mean, double loud, Optional<Stimulus.ToneBurst> burst) {
        if (burst.isEmpty()) {
            return steady(mean);
        }
        double on = burst.get().onSeconds();
        double period = burst.get().periodSeconds();
        return new Pulse(loud, Math.max(0, (mean * period - loud * on) / (period - on)));
    }

    static Optional<Stimulus.ToneBurst> burst(Stimulus stimulus) {
        return stimulus instanceof Stimulus.ToneBurst burst ? Optional.of(burst) : Optional.empty();
    }
}
