// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.List;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.units.text.Messages;

/**
 * An item of the plan as it stands, in words.
 *
 * @param item which
 * @param status how it stands
 * @param step what the step is, short
 * @param measurement what is measured
 * @param sentence what else is to be said, such as why it failed; may be empty
 * @param entryIds what counts of it in the log
 */
record ItemRow(PlanItem item, Status status, String step, String measurement, String sentence, List<String> entryIds) {
    private static final Messages TEXTS = Messages.of(ItemRow.class);

    /** How an item stands. Each has a word and a picture of its own. */
    enum Status {
        /** Still to be done. */
        OPEN,
        /** The first that is still to be done. */
        NEXT,
        /** The amplifier rests before it. */
        RESTING,
        /** Being measured. */
        RUNNING,
        /** In the log. */
        DONE,
        /** Left out, with a reason. */
        SKIPPED,
        /** Was begun or wanted and gave no result. */
        FAILED,
        /** Was done, and taken back; still to be done. */
        VOIDED;

        String word() {
            return TEXTS.text("status." + name());
        }
    }

    ItemRow {
        entryIds = List.copyOf(entryIds);
    }

    /** Returns whether it is still to be done. */
    boolean open() {
        return status == Status.OPEN || status == Status.NEXT || status == Status.FAILED || status == Status.VOIDED;
    }
}
