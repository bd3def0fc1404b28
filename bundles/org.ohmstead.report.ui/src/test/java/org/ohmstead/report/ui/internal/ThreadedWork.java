// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Consumer;
import org.eclipse.swt.widgets.Display;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.WorkProgress;

/** Runs each work on a thread of its own and hands results to the display. */
final class ThreadedWork implements BackgroundWork {
    private static final WorkProgress PROGRESS = new WorkProgress() {
        @Override
        public void step(int done, int total, String what) {
            // The view shows no progress of its own.
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    };

    private final Display display;

    ThreadedWork(Display display) {
        this.display = display;
    }

    @Override
    public <T> void start(String title, Task<T> task, Consumer<T> done, Consumer<Exception> failed) {
        FutureTask<T> future = new FutureTask<>(() -> task.run(PROGRESS));
        Thread thread = new Thread(
                () -> {
                    future.run();
                    later(() -> {
                        try {
                            done.accept(future.get());
                        } catch (ExecutionException failure) {
                            failed.accept((Exception) failure.getCause());
                        } catch (InterruptedException stopped) {
                            Thread.currentThread().interrupt();
                        }
                    });
                },
                title);
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void later(Runnable action) {
        if (!display.isDisposed()) {
            display.asyncExec(action);
        }
    }
}
