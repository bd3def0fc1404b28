// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Consumer;
import org.ohmstead.units.text.Messages;

/**
 * Short work on files that must come to an end which is told, one piece after the other; unlike {@link BackgroundWork}, which a user may
 * cancel.
 */
final class OffThread {
    private static final Messages TEXTS = Messages.of(OffThread.class);

    private final BackgroundWork work;
    private final Alarm alarm;

    OffThread(BackgroundWork work, Alarm alarm) {
        this.work = work;
        this.alarm = alarm;
    }

    /** Runs something on the alarm's thread; exactly one of the consumers hears of it on the user interface's. */
    <T> void run(Callable<T> action, Consumer<T> done, Consumer<Exception> failed) {
        FutureTask<T> task = new FutureTask<>(action);
        alarm.soon(() -> {
            task.run();
            work.later(() -> tell(task, done, failed));
        });
    }

    private static <T> void tell(FutureTask<T> task, Consumer<T> done, Consumer<Exception> failed) {
        T result;
        try {
            result = task.get();
        } catch (ExecutionException failure) {
            Throwable cause = failure.getCause();
            failed.accept(
                    cause instanceof SessionException said
                            ? said
                            : new SessionException(TEXTS.text("files.failed", Guard.reason(cause)), cause));
            return;
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            failed.accept(interrupted);
            return;
        }
        done.accept(result);
    }
}
