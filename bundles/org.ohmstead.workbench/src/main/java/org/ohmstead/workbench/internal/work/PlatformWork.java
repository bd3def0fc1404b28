// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.work;

import java.util.Objects;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.swt.widgets.Display;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.BackgroundWork;

/** Runs work as platform jobs, so that the Progress view shows it and can cancel it. */
public final class PlatformWork implements BackgroundWork {
    private static final Messages TEXTS = Messages.of(PlatformWork.class);

    /** The family of all jobs that are Ohmstead's own, to wait for them. */
    public static final Object FAMILY = new Object();

    private final Display display;

    /** Makes it for the display on whose thread results are handed over. */
    public PlatformWork(Display display) {
        this.display = Objects.requireNonNull(display, "display");
    }

    @Override
    public <T> void start(String title, Task<T> task, Consumer<T> done, Consumer<Exception> failed) {
        new TaskJob<>(title, new Work<>(task, done, failed)).schedule();
    }

    @Override
    public void later(Runnable action) {
        if (!display.isDisposed()) {
            display.asyncExec(action);
        }
    }

    /** What is to be done, and who hears of it. */
    private record Work<T>(Task<T> task, Consumer<T> done, Consumer<Exception> failed) {}

    private final class TaskJob<T> extends Job {
        /** Let go of when it begins: the platform's list of progress now and then keeps a job that has ended, and all it knows. */
        private final AtomicReference<Work<T>> work;

        TaskJob(String title, Work<T> work) {
            super(title);
            this.work = new AtomicReference<>(work);
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            Work<T> taken = work.getAndSet(null);
            MonitorProgress progress = new MonitorProgress(getName(), monitor);
            FutureTask<T> future = new FutureTask<>(() -> taken.task().run(progress));
            future.run();
            try {
                T result = future.get();
                if (progress.cancelled()) {
                    return Status.CANCEL_STATUS;
                }
                later(() -> taken.done().accept(result));
                return Status.OK_STATUS;
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return Status.CANCEL_STATUS;
            } catch (ExecutionException e) {
                return ended(e.getCause(), taken.failed());
            } finally {
                progress.end();
            }
        }

        private IStatus ended(Throwable cause, Consumer<Exception> failed) {
            if (cause instanceof CancellationException) {
                return Status.CANCEL_STATUS;
            }
            ILog.of(PlatformWork.class).error(getName() + " failed. " + cause.getMessage(), cause);
            Exception shown = cause instanceof Exception exception
                    ? exception
                    : new IllegalStateException(TEXTS.text("work.fault", getName(), cause), cause);
            later(() -> failed.accept(shown));
            return Status.OK_STATUS;
        }

        @Override
        public boolean belongsTo(Object family) {
            return family == FAMILY;
        }
    }
}
