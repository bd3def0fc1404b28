// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Consumer;

/** Background work that is done at once on the caller's thread, or when it is let go. */
final class HandWork implements BackgroundWork {
    private static final WorkProgress PROGRESS = new WorkProgress() {
        @Override
        public void step(int done, int total, String what) {
            if (done < 0 || done > total) {
                throw new IllegalArgumentException("done is " + done + "; it must lie between 0 and " + total);
            }
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    };

    private final List<Runnable> held = new ArrayList<>();
    private boolean holding;
    private boolean holdingLater;

    void hold() {
        holding = true;
    }

    void letGo() {
        holding = false;
        holdingLater = false;
        List<Runnable> actions = List.copyOf(held);
        held.clear();
        actions.forEach(Runnable::run);
    }

    @Override
    public <T> void start(String title, Task<T> task, Consumer<T> done, Consumer<Exception> failed) {
        if (holding) {
            held.add(() -> run(task, done, failed));
        } else {
            run(task, done, failed);
        }
    }

    private static <T> void run(Task<T> task, Consumer<T> done, Consumer<Exception> failed) {
        FutureTask<T> future = new FutureTask<>(() -> task.run(PROGRESS));
        future.run();
        T result;
        try {
            result = future.get();
        } catch (CancellationException cancelled) {
            return;
        } catch (ExecutionException failure) {
            if (failure.getCause() instanceof Exception cause) {
                failed.accept(cause);
                return;
            }
            throw new AssertionError(failure.getCause());
        } catch (InterruptedException interrupted) {
            throw new AssertionError(interrupted);
        }
        done.accept(result);
    }

    /** Holds back what is wanted later, until it is let go. */
    void holdLater() {
        holdingLater = true;
    }

    @Override
    public void later(Runnable action) {
        if (holdingLater) {
            held.add(action);
        } else {
            action.run();
        }
    }
}
