// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.time.Duration;
import org.ohmstead.testlog.LogEntry;

/** Hears how a plan is carried out, on the thread that does so; returns at once. What it throws is passed over. */
public interface RunListener {
    /**
     * Hears that something changed.
     *
     * @param state how all stands now
     */
    default void changed(PlanState state) {}

    /**
     * Hears how far the item at hand is, at most ten times a second.
     *
     * @param item which
     * @param progress how far it is
     */
    default void progress(PlanItem item, ProgressView progress) {}

    /**
     * Hears, about once a second, that the amplifier rests before an item.
     *
     * @param item before which
     * @param left how long it still does; zero when the rest is over, however it ended
     */
    default void resting(PlanItem item, Duration left) {}

    /**
     * Hears of an entry that is in the log and on the disk.
     *
     * @param entry which
     */
    default void logged(LogEntry entry) {}

    /**
     * Hears how a run of an item ended.
     *
     * @param item which
     * @param outcome how
     */
    default void ended(PlanItem item, RunOutcome outcome) {}
}
