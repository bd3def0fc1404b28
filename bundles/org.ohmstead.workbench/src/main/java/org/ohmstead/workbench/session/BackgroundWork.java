// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.function.Consumer;

/**
 * Runs long work away from the user interface. In the workbench it is a platform job, seen in the Progress view and
 * cancelled there; a test may run it at once.
 */
public interface BackgroundWork {
    /**
     * A piece of work.
     *
     * @param <T> what it gives
     */
    @FunctionalInterface
    interface Task<T> {
        /**
         * Does the work on a thread of its own.
         *
         * @throws Exception when it fails; the message is shown to the user
         * @throws java.util.concurrent.CancellationException when the progress says that the user cancelled
         */
        T run(WorkProgress progress) throws Exception;
    }

    /**
     * Starts work.
     *
     * @param title what the user sees, such as "Reading the test log"
     * @param task what to do
     * @param done called on the user interface's thread with the result, unless the work failed or was cancelled
     * @param failed called on the user interface's thread with what went wrong; not called after a cancel
     */
    <T> void start(String title, Task<T> task, Consumer<T> done, Consumer<Exception> failed);

    /**
     * Runs something on the user interface's thread soon; from any thread. Does nothing once the interface is gone.
     */
    void later(Runnable action);
}
