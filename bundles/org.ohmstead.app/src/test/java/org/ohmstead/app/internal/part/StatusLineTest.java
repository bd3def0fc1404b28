// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CLabel;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.SharedLog;
import org.ohmstead.units.text.Language;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.Unsaved;
import org.ohmstead.workbench.session.WorkProgress;

class StatusLineTest {
    private static final Path DEMO = Path.of("../../demo-data/larkspur.ohmstead/project.json");
    private static final long PATIENCE_NANOS = 20_000_000_000L;

    @TempDir
    private Path folder;

    private final Display display = Display.getDefault();
    private final Shell shell = new Shell(display);
    private final ProjectDesk desk = new ProjectDesk(new ShortWork(), Clock.systemUTC());
    private final List<Exception> failures = new ArrayList<>();
    private int handOvers;

    /** Work that is so short here that it is done at once; from other threads as the platform would. */
    private final class ShortWork implements BackgroundWork {
        @Override
        public <T> void start(String title, Task<T> task, Consumer<T> done, Consumer<Exception> failed) {
            FutureTask<T> run = new FutureTask<>(() -> task.run(new WorkProgress() {
                @Override
                public void step(int done, int total, String what) {
                    // Nobody looks.
                }

                @Override
                public boolean cancelled() {
                    return false;
                }
            }));
            run.run();
            T result;
            try {
                result = run.get();
            } catch (ExecutionException failure) {
                failed.accept(new IllegalStateException(failure.getCause()));
                return;
            } catch (InterruptedException interrupted) {
                throw new AssertionError(interrupted);
            }
            done.accept(result);
        }

        @Override
        public void later(Runnable action) {
            display.asyncExec(action);
        }
    }

    @BeforeEach
    void openLine() throws Exception {
        Files.copy(DEMO, folder.resolve("project.json"));
        shell.setLayout(new FillLayout());
        new StatusLine(shell, desk, () -> handOvers++);
        shell.pack();
        shell.open();
    }

    @AfterEach
    void close() throws Exception {
        desk.close(Unsaved.DISCARD);
        shell.dispose();
        desk.dispose();
        assertEquals(List.of(), failures);
    }

    private CLabel label(String id) {
        for (Control child : ((StatusLine) shell.getChildren()[0]).getChildren()) {
            if (id.equals(child.getData(Ids.KEY))) {
                return (CLabel) child;
            }
        }
        throw new AssertionError("no " + id);
    }

    private void await(String what, BooleanSupplier condition) {
        long end = System.nanoTime() + PATIENCE_NANOS;
        while (!condition.getAsBoolean()) {
            assertTrue(System.nanoTime() < end, what + " did not come");
            if (!display.readAndDispatch()) {
                LockSupport.parkNanos(1_000_000);
            }
        }
    }

    private void click(Control control) {
        Event event = new Event();
        event.button = 1;
        control.notifyListeners(SWT.MouseUp, event);
    }

    @Test
    void aProjectWithoutASharedLogHasNothingOfOne() {
        assertEquals("No project open", label("status.project").getText());
        desk.open(folder, Unsaved.REFUSE, session -> {}, failures::add);
        await("the project", () -> label("status.project").getText().contains("saved"));
        assertEquals("", label("status.shared").getText());
        assertNull(label("status.shared").getImage());
        click(label("status.shared"));
        assertEquals(0, handOvers);
    }

    @Test
    void showsWhatPeopleMustPutRightAndHandsOverOnAClick() {
        desk.open(folder, Unsaved.REFUSE, session -> {}, failures::add);
        await("the project", () -> desk.session().isPresent());
        SharedLog lab = new SharedLog("lab.example.org", 5432, "tests", "Bench 1", "missing.pem");
        desk.session().orElseThrow().edit("Set shared log", project -> project.withSharedLog(Optional.of(lab)));
        desk.save(() -> {}, failures::add);
        CLabel shared = label("status.shared");
        await("the state", () -> shared.getText().equals("Shared log stopped"));
        assertTrue(shared.getToolTipText().contains("missing.pem"), shared.getToolTipText());
        assertTrue(shared.getToolTipText().endsWith("Click to hand over now."), shared.getToolTipText());
        assertNotNull(shared.getImage());
        click(shared);
        assertEquals(1, handOvers);
        desk.session().orElseThrow().edit("Set shared log", project -> project.withSharedLog(Optional.empty()));
        desk.save(() -> {}, failures::add);
        await("the end", () -> shared.getText().isEmpty());
        assertNull(shared.getImage());
    }

    /** The room of the line is fixed; a line that is wider than in English would not fit into a narrow window. */
    @Test
    void speaksGermanInNoMoreRoom() {
        String before = System.getProperty(Language.PROPERTY);
        int room = shell.getChildren()[0].computeSize(SWT.DEFAULT, SWT.DEFAULT).x;
        shell.getChildren()[0].dispose();
        try {
            System.setProperty(Language.PROPERTY, "de");
            StatusLine line = new StatusLine(shell, desk, () -> handOvers++);
            shell.pack();
            assertEquals("Kein Projekt offen", label("status.project").getText());
            int words = label("status.project").computeSize(SWT.DEFAULT, SWT.DEFAULT).x;
            assertTrue(words <= label("status.project").getSize().x, words + " points of words are not cut");
            assertTrue(line.computeSize(SWT.DEFAULT, SWT.DEFAULT).x <= room, line.computeSize(-1, -1) + ", " + room);
            desk.open(folder, Unsaved.REFUSE, session -> {}, failures::add);
            await("the project", () -> label("status.project").getText().endsWith(", gespeichert"));
            assertTrue(
                    label("status.supply").getText().startsWith("Versorgung "),
                    label("status.supply").getText());
            assertTrue(
                    label("status.ambient").getText().startsWith("Luft "),
                    label("status.ambient").getText());
        } finally {
            restore(before);
        }
    }

    private static void restore(String language) {
        if (language == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, language);
        }
    }
}
