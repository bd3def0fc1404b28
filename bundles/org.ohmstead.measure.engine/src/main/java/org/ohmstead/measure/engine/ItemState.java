// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.List;

/**
 * What became of an item of a plan.
 *
 * @param item which
 * @param status how it stands
 * @param entryIds what counts of it in the log, in order
 * @param sentence why it was skipped, or how it last ended without a result; empty otherwise
 */
public record ItemState(PlanItem item, Status status, List<String> entryIds, String sentence) {
    /** How an item stands. */
    public enum Status {
        /** Still to be done. */
        PENDING,
        /** Being measured now. */
        RUNNING,
        /** In the log. */
        DONE,
        /** Left out by somebody, with a reason; in the log. */
        SKIPPED,
        /** Was begun or wanted and gave no result; still to be done. */
        FAILED
    }

    public ItemState {
        entryIds = List.copyOf(entryIds);
    }
}
