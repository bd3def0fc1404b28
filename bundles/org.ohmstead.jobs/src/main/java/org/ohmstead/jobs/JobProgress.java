// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.util.concurrent.CancellationException;
import org.ohmstead.units.text.Messages;

/** Hears how far a job has come, and says whether it shall stop. Steps are told by one thread; the rest is asked by several. */
public interface JobProgress {
    /** Tells nobody and never stops. */
    JobProgress SILENT = new JobProgress() {
        @Override
        public void step(int done, int total, String what) {
            // Nobody listens.
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    };

    /**
     * Hears that a step begins, or with {@code done} equal to {@code total} that all are done. Numbers never fall within a job.
     *
     * @param done steps that are done, from 0 to {@code total}
     * @param total steps in all, above 0
     * @param what the step at hand
     */
    void step(int done, int total, String what);

    /** Returns whether the job shall stop before its next step; safe to be called by several threads. */
    boolean cancelled();

    /**
     * Hears of something odd that does not stop the job.
     *
     * @param sentence whole sentences for a technician
     */
    default void remark(String sentence) {}

    /**
     * Stops the job if it shall.
     *
     * @throws CancellationException when it shall
     */
    default void stopIfCancelled() {
        if (cancelled()) {
            throw new CancellationException(Messages.of(JobProgress.class).text("job.cancelled"));
        }
    }
}
