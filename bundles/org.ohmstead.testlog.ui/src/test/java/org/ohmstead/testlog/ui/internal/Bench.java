// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.FutureTask;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Widget;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.Unsaved;
import org.ohmstead.workbench.session.WorkProgress;

/** A project with a small log in a folder of its own, a desk on which it lies open, and a bare shell. */
final class Bench implements AutoCloseable {
    private static final long PATIENCE_NANOS = 20_000_000_000L;

    final Display display = Display.getDefault();
    final Path folder;
    final ProjectDesk desk;
    final Shell shell = new Shell(display);
    private final ExecutorService thread = Executors.newSingleThreadExecutor();
    final StepWatch watch = new StepWatch();
    /** Work that was begun and whose end was not told yet. */
    private final AtomicInteger begun = new AtomicInteger();

    /** Work on one other thread, as the workbench's jobs. */
    private final class Elsewhere implements BackgroundWork {
        @Override
        public <T> void start(String title, Task<T> task, Consumer<T> done, Consumer<Exception> failed) {
            begun.incrementAndGet();
            thread.execute(new FutureTask<T>(() -> task.run(new Silent())) {
                @Override
                protected void done() {
                    later(() -> {
                        begun.decrementAndGet();
                        deliver(this, done, failed);
                    });
                }
            });
        }

        @Override
        public void later(Runnable action) {
            if (!display.isDisposed()) {
                display.asyncExec(action);
            }
        }
    }

    private static <T> void deliver(FutureTask<T> ended, Consumer<T> done, Consumer<Exception> failed) {
        T result;
        try {
            result = ended.get();
        } catch (ExecutionException failure) {
            if (failure.getCause() instanceof Exception cause && !(cause instanceof CancellationException)) {
                failed.accept(cause);
            }
            return;
        } catch (InterruptedException interrupted) {
            throw new IllegalStateException("nobody interrupts the user interface", interrupted);
        }
        done.accept(result);
    }

    private static final class Silent implements WorkProgress {
        @Override
        public void step(int done, int total, String what) {
            // Nobody looks.
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    }

    Bench(Path folder) {
        this.folder = folder;
        this.desk = new ProjectDesk(new Elsewhere(), Clock.systemUTC());
        shell.setLayout(new FillLayout());
        shell.setSize(1200, 700);
    }

    /** Puts the demo's project into the folder and fills its log. */
    Bench withLog(List<Reading> readings) throws IOException, TestLogException {
        Files.copy(Path.of("../../demo-data/larkspur.ohmstead/project.json"), folder.resolve("project.json"));
        if (!readings.isEmpty()) {
            try (TestLog log = TestLog.open(logFile())) {
                for (Reading reading : readings) {
                    log.append(reading);
                }
            }
        }
        return this;
    }

    Path logFile() {
        return folder.resolve(TestLog.FILE_NAME);
    }

    Bench open() {
        AtomicReference<Exception> failure = new AtomicReference<>();
        desk.open(folder, Unsaved.DISCARD, session -> {}, failure::set);
        until("the project is open", () -> desk.session().isPresent() || failure.get() != null);
        if (failure.get() != null) {
            fail(failure.get());
        }
        until("the log is read", () -> desk.log().state() != LogState.READING);
        return this;
    }

    LogComposite show() {
        LogComposite log = new LogComposite(shell, desk);
        shell.open();
        settle();
        return log;
    }

    /** Shows the log with a memory that the test can look into. */
    LogComposite show(LogComposite.Keeping keeping) {
        LogComposite log = new LogComposite(shell, desk, LogSearch.of(desk), keeping);
        shell.open();
        settle();
        return log;
    }

    /** Goes on until nothing is left to do, here or in the background. */
    void settle() {
        long deadline = System.nanoTime() + PATIENCE_NANOS;
        while (true) {
            if (step()) {
                continue;
            }
            if (begun.get() == 0) {
                return;
            }
            if (System.nanoTime() > deadline) {
                fail("waited too long until the background was done");
            }
            LockSupport.parkNanos(200_000);
        }
    }

    private boolean step() {
        return watch.step(display::readAndDispatch);
    }

    void until(String what, BooleanSupplier condition) {
        await(what, condition);
        settle();
    }

    /** Waits for something while the background is still at work. */
    void await(String what, BooleanSupplier condition) {
        long deadline = System.nanoTime() + PATIENCE_NANOS;
        while (!condition.getAsBoolean()) {
            if (!step()) {
                if (System.nanoTime() > deadline) {
                    fail("waited too long until " + what);
                }
                LockSupport.parkNanos(1_000_000);
            }
        }
    }

    <W extends Widget> W find(String id, Class<W> type) {
        return Ids.find(shell, id, type);
    }

    /** Presses a button or chooses in a combo as the user would: by the event that comes then. */
    void select(Control control) {
        if (!control.isEnabled()) {
            fail(Ids.of(control) + " is disabled");
        }
        watch.step(() -> {
            control.notifyListeners(SWT.Selection, new Event());
            return true;
        });
        settle();
    }

    @Override
    public void close() {
        shell.dispose();
        desk.dispose();
        settle();
        thread.shutdown();
        watch.close();
    }
}
