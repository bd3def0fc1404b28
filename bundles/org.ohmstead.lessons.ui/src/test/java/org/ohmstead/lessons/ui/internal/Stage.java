// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.FutureTask;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Widget;
import org.ohmstead.lessons.LessonProvider;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.Unsaved;
import org.ohmstead.workbench.session.WorkProgress;

/** A project in a folder of its own, a desk on which it lies open, and a bare shell. */
final class Stage implements AutoCloseable {
    private static final long PATIENCE_NANOS = 20_000_000_000L;

    final Display display = Display.getDefault();
    final Path folder;
    final ProjectDesk desk;
    final Shell shell = new Shell(display);
    final List<Path> opened = new ArrayList<>();
    final OurTime time = new OurTime(Thread.currentThread());
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
            if (failure.getCause() instanceof Exception cause) {
                failed.accept(cause);
                return;
            }
            throw new IllegalStateException(failure);
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

    Stage(Path folder) throws IOException {
        this.folder = folder;
        this.desk = new ProjectDesk(new Elsewhere(), Clock.systemUTC());
        Files.copy(Path.of("../../demo-data/larkspur.ohmstead/project.json"), folder.resolve("project.json"));
        shell.setLayout(new FillLayout());
        shell.setSize(1280, 640);
    }

    /** Makes the view, and waits until a lesson is there with what its model gave. */
    LessonComposite lessons(LessonProvider... providers) {
        LessonComposite made = new LessonComposite(shell, desk, new LessonComposite.Surroundings() {
            @Override
            public List<LessonProvider> providers() {
                return List.of(providers);
            }

            @Override
            public Optional<Path> askFile(String name) {
                return Optional.of(folder.resolve("asked-" + name));
            }

            @Override
            public void open(Path file) {
                opened.add(file);
            }
        });
        shell.open();
        until("a lesson is there", () -> made.chosen().isPresent());
        return made;
    }

    /** Chooses a lesson in the list as the user would, and waits until all its parts are there. */
    void choose(LessonComposite view, String id) {
        Table list = find("lessons.list", Table.class);
        List<String> ids = view.lessonIds();
        list.setSelection(ids.indexOf(id));
        select(list);
        ready(view, id);
    }

    void ready(LessonComposite view, String id) {
        until(
                "the lesson " + id + " is there",
                () -> view.complete() && view.chosen().equals(Optional.of(id)));
    }

    Stage open() {
        AtomicReference<Exception> failure = new AtomicReference<>();
        desk.open(folder, Unsaved.DISCARD, session -> {}, failure::set);
        until("the project is open", () -> desk.session().isPresent() || failure.get() != null);
        if (failure.get() != null) {
            fail(failure.get());
        }
        return this;
    }

    private boolean dispatch() {
        time.begin();
        boolean any = display.readAndDispatch();
        time.end();
        return any;
    }

    void settle() {
        while (dispatch()) {
            // Until nothing is left to do.
        }
    }

    void until(String what, BooleanSupplier condition) {
        long deadline = System.nanoTime() + PATIENCE_NANOS;
        while (!condition.getAsBoolean()) {
            if (!dispatch()) {
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

    /** Returns the words of a label as the user reads them. */
    String label(String id) {
        return find(id, Label.class).getText().replace('\u00a0', ' ').replace("&&", "&");
    }

    /** Returns whether a control is there and has a place. */
    boolean shown(String id) {
        return Ids.exists(shell, id)
                && find(id, Control.class).isVisible()
                && find(id, Control.class).getSize().y > 0;
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
        time.stop();
        shell.dispose();
        desk.dispose();
        thread.shutdown();
        settle();
    }
}
