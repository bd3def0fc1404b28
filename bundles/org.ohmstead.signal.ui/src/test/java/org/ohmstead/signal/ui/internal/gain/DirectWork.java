// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.gain;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Consumer;
import org.eclipse.swt.widgets.Display;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.WorkProgress;

/** Work that is done at once. */
record DirectWork(Display display) implements BackgroundWork {
    private static final WorkProgress SILENT = new WorkProgress() {
        @Override
        public void step(int step, int total, String what) {
            if (step > total) {
                throw new IllegalArgumentException("step is " + step + "; it must be at most " + total);
            }
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    };

    @Override
    public <T> void start(String title, Task<T> task, Consumer<T> done, Consumer<Exception> failed) {
        FutureTask<T> future = new FutureTask<>(() -> task.run(SILENT));
        future.run();
        try {
            done.accept(future.get());
        } catch (ExecutionException failure) {
            failed.accept((Exception) failure.getCause());
        } catch (InterruptedException interrupted) {
            throw new AssertionError(interrupted);
        }
    }

    @Override
    public void later(Runnable action) {
        display.asyncExec(action);
    }
}
