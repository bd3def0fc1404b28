// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import java.util.function.Consumer;
import org.ohmstead.workbench.session.BackgroundWork;

/** Starts work whose end is always told, also when the user cancelled it, so that nothing waits for ever. */
final class EndedWork {
    private EndedWork() {}

    /**
     * Starts work.
     *
     * @param work what runs it
     * @param title what the user sees
     * @param task what to do
     * @param done hears of the result
     * @param failed hears what went wrong
     * @param cancelled runs after a cancel; rarely also shortly before {@code done} or {@code failed}
     */
    static <T> void start(
            BackgroundWork work,
            String title,
            BackgroundWork.Task<T> task,
            Consumer<T> done,
            Consumer<Exception> failed,
            Runnable cancelled) {
        boolean[] told = {false};
        work.start(
                title,
                progress -> {
                    try {
                        return task.run(progress);
                    } finally {
                        // Twice later, so that what the work itself tells is told first.
                        work.later(() -> work.later(() -> {
                            if (!told[0]) {
                                cancelled.run();
                            }
                        }));
                    }
                },
                result -> {
                    told[0] = true;
                    done.accept(result);
                },
                failure -> {
                    told[0] = true;
                    failed.accept(failure);
                });
    }
}
