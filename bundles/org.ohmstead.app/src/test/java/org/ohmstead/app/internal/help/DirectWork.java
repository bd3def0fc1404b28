// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Consumer;
import org.eclipse.swt.widgets.Display;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.WorkProgress;

/** Does the work when the test says so, on the test's own thread. */
final class DirectWork implements BackgroundWork {
    private Runnable waiting = () -> {};

    @Override
    public <T> void start(String title, Task<T> task, Consumer<T> done, Consumer<Exception> failed) {
        waiting = () -> {
            FutureTask<T> run = new FutureTask<>(() -> task.run(new Unwatched()));
            run.run();
            try {
                done.accept(run.get());
            } catch (ExecutionException e) {
                failed.accept(e.getCause() instanceof Exception cause ? cause : e);
            } catch (InterruptedException e) {
                throw new AssertionError("nothing interrupts a task that has ended", e);
            }
        };
    }

    @Override
    public void later(Runnable action) {
        Display.getDefault().asyncExec(action);
    }

    void finish() {
        waiting.run();
    }

    private static final class Unwatched implements WorkProgress {
        @Override
        public void step(int done, int total, String what) {
            // Nobody watches.
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    }
}
