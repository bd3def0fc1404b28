// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import org.ohmstead.units.text.Messages;

/** How far work has come; called from the thread of the work. */
public interface WorkProgress {
    /**
     * Says how far the work has come.
     *
     * @param done steps done, from 0 to {@code total}
     * @param total steps in all, above 0
     * @param what the step at hand, for the user
     */
    void step(int done, int total, String what);

    /** Returns whether the user asked to stop; the work then ends soon by a {@link java.util.concurrent.CancellationException}. */
    boolean cancelled();

    /** Throws a {@link java.util.concurrent.CancellationException} when the user asked to stop. */
    default void stopIfCancelled() {
        if (cancelled()) {
            throw new java.util.concurrent.CancellationException(
                    Messages.of(WorkProgress.class).text("work.cancelled"));
        }
    }
}
