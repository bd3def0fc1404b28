// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;

/** Runs code of others so that its failure harms nobody else. */
final class Guard {
    private Guard() {}

    /** Runs something on this thread; returns what it threw, when it did. */
    static Optional<Throwable> run(Runnable action) {
        FutureTask<Void> task = new FutureTask<>(action, null);
        task.run();
        try {
            task.get();
            return Optional.empty();
        } catch (ExecutionException failure) {
            return Optional.of(failure.getCause());
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            return Optional.of(interrupted);
        }
    }

    /** Returns in a few words what went wrong. */
    static String reason(Throwable failure) {
        String message = failure.getMessage();
        return message == null || message.isBlank() ? failure.getClass().getSimpleName() : message;
    }
}
