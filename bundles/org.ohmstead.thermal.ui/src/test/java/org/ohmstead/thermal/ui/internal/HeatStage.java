// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

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
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Widget;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.Unsaved;
import org.ohmstead.workbench.session.WorkProgress;

/** The demo's project in a folder of its own, a desk on which it lies open, and a bare shell. */
final class HeatStage implements AutoCloseable {
    private static final long PATIENCE_NANOS = 20_000_000_000L;

    final Display display = Display.getDefault();
    final Path folder;
    final ProjectDesk desk;
    final Shell shell = new Shell(display);
    private final ExecutorService thread = Executors.newSingleThreadExecutor();

    /** Work on one other thread, as the workbench's jobs. */
    private final class Elsewhere implements BackgroundWork {
        @Override
        public <T> void start(String title, Task<T> task, Consumer<T> done, Consumer<Exception> failed) {
            thread.execute(new FutureTask<T>(() -> task.run(new Silent())) {
                @Override
                protected void done() {
                    later(() -> deliver(this, done, failed));
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

    HeatStage(Path folder) {
        this.folder = folder;
        this.desk = new ProjectDesk(new Elsewhere(), Clock.systemUTC());
        shell.setLayout(new FillLayout());
        shell.setSize(1200, 700);
    }

    /** Puts the demo's project into the folder. */
    HeatStage withProject() throws IOException {
        Files.copy(Path.of("../../demo-data/larkspur.ohmstead/project.json"), folder.resolve("project.json"));
        return this;
    }

    HeatStage open() {
        AtomicReference<Exception> failure = new AtomicReference<>();
        desk.open(folder, Unsaved.DISCARD, session -> {}, failure::set);
        until("the project is open", () -> desk.session().isPresent() || failure.get() != null);
        if (failure.get() != null) {
            fail(failure.get());
        }
        until("the log is read", () -> desk.log().state() != LogState.READING);
        return this;
    }

    /** Shows what is made in the shell. */
    <C> C show(Function<Composite, C> maker) {
        C made = maker.apply(shell);
        shell.open();
        settle();
        return made;
    }

    Project project() {
        return desk.session().orElseThrow().project();
    }

    void edit(UnaryOperator<Project> change) {
        desk.session().orElseThrow().edit("Change for the test", change);
        settle();
    }

    /** Chooses an entry of a list as the user would. */
    void choose(String id, String entry) {
        Combo combo = find(id, Combo.class);
        int index = combo.indexOf(entry);
        if (index < 0) {
            fail(entry + " is none of " + List.of(combo.getItems()));
        }
        combo.select(index);
        select(combo);
    }

    /** Ticks a box or takes the tick away. */
    void tick(String id, boolean ticked) {
        Button button = find(id, Button.class);
        button.setSelection(ticked);
        select(button);
    }

    /** Returns what a label says. */
    String said(String id) {
        return find(id, Label.class).getText();
    }

    /** Returns what stands in a field. */
    String text(String id) {
        return find(id, Text.class).getText();
    }

    /** Types into a field and presses Enter. */
    void type(String id, String words) {
        Text text = find(id, Text.class);
        text.setText(words);
        text.notifyListeners(SWT.DefaultSelection, new Event());
        settle();
    }

    void press(String id) {
        select(find(id, Button.class));
    }

    void settle() {
        while (display.readAndDispatch()) {
            // Until nothing is left to do.
        }
    }

    void until(String what, BooleanSupplier condition) {
        long deadline = System.nanoTime() + PATIENCE_NANOS;
        while (!condition.getAsBoolean()) {
            if (!display.readAndDispatch()) {
                if (System.nanoTime() > deadline) {
                    fail("waited too long until " + what);
                }
                LockSupport.parkNanos(1_000_000);
            }
        }
        settle();
    }

    <W extends Widget> W find(String id, Class<W> type) {
        return Ids.find(shell, id, type);
    }

    /** Presses a button or chooses in a combo as the user would: by the event that comes then. */
    void select(Control control) {
        if (!control.isEnabled()) {
            fail(Ids.of(control) + " is disabled");
        }
        control.notifyListeners(SWT.Selection, new Event());
        settle();
    }

    @Override
    public void close() {
        shell.dispose();
        desk.dispose();
        thread.shutdown();
        settle();
    }
}
