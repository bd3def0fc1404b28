// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayDeque;
import java.util.Queue;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Consumer;
import org.eclipse.swt.widgets.Display;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.WorkProgress;

/** Work that runs when the test says so, at once by default. */
final class HeldWork implements BackgroundWork {
    final Queue<Runnable> held = new ArrayDeque<>();
    boolean hold;
    int cancelled;
    private final Display display;

    HeldWork(Display display) {
        this.display = display;
    }

    @Override
    public <T> void start(String title, Task<T> task, Consumer<T> done, Consumer<Exception> failed) {
        Runnable run = () -> run(task, done, failed);
        if (hold) {
            held.add(run);
        } else {
            run.run();
        }
    }

    private <T> void run(Task<T> task, Consumer<T> done, Consumer<Exception> failed) {
        FutureTask<T> future = new FutureTask<>(() -> task.run(new WorkProgress() {
            @Override
            public void step(int step, int total, String what) {
                assertTrue(step <= total);
            }

            @Override
            public boolean cancelled() {
                return false;
            }
        }));
        future.run();
        try {
            done.accept(future.get());
        } catch (ExecutionException e) {
            if (e.getCause() instanceof CancellationException) {
                cancelled++;
            } else {
                failed.accept((Exception) e.getCause());
            }
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    @Override
    public void later(Runnable action) {
        display.asyncExec(action);
    }
}
