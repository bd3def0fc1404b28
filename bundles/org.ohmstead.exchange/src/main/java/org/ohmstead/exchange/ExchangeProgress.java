// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import java.util.concurrent.CancellationException;
import org.ohmstead.units.text.Messages;

/** Hears how far a piece of work has come, and says whether it shall stop. Called by the thread that does the work. */
public interface ExchangeProgress {
    /** Tells nobody and never stops. */
    ExchangeProgress SILENT = new ExchangeProgress() {
        @Override
        public void step(long done, long total, String what) {
            // Nobody listens.
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    };

    /**
     * Hears that a part of the work begins. Numbers never fall within a piece of work.
     *
     * @param done parts that are done, from 0 to {@code total}
     * @param total parts in all
     * @param what the part at hand
     */
    void step(long done, long total, String what);

    /** Returns whether the work shall stop before its next part. */
    boolean cancelled();

    /**
     * Stops the work if it shall.
     *
     * @throws CancellationException when it shall; what was begun is then taken away again
     */
    default void stopIfCancelled() {
        if (cancelled()) {
            throw new CancellationException(Messages.of(ExchangeProgress.class).text("work.cancelled"));
        }
    }
}
