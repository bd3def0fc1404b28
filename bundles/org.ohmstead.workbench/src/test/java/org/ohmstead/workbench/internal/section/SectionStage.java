// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CCombo;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.ToolItem;
import org.eclipse.swt.widgets.Widget;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.section.SectionControl;
import org.ohmstead.workbench.section.SectionPage;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.ProblemPlace;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Unsaved;
import org.ohmstead.workbench.session.WorkProgress;
import org.ohmstead.workbench.table.EditTable;

/** A bare shell with a desk whose project is a copy of the demo's; work is done at once. */
final class SectionStage implements AutoCloseable {
    private static final int DEADLINE_MILLISECONDS = 10_000;
    private static final Path DEMO = Path.of("../../demo-data/larkspur.ohmstead/project.json");

    final Display display = Display.getDefault();
    final Shell shell = new Shell(display);
    final Path folder;
    final ProjectDesk desk;
    private SectionControl control;

    /** Work that is done when it is asked for. */
    private final class AtOnce implements BackgroundWork {
        @Override
        public <T> void start(String title, Task<T> task, Consumer<T> done, Consumer<Exception> failed) {
            FutureTask<T> future = new FutureTask<>(() -> task.run(new WorkProgress() {
                @Override
                public void step(int stepsDone, int total, String what) {}

                @Override
                public boolean cancelled() {
                    return false;
                }
            }));
            future.run();
            try {
                done.accept(future.get());
            } catch (ExecutionException e) {
                failed.accept((Exception) e.getCause());
            } catch (InterruptedException e) {
                throw new AssertionError(e);
            }
        }

        @Override
        public void later(Runnable action) {
            display.asyncExec(action);
        }
    }

    private SectionStage(Path folder, UnaryOperator<String> change) throws IOException {
        this.folder = folder;
        Files.createDirectories(folder);
        String text = Files.readString(DEMO, StandardCharsets.UTF_8);
        String changed = change.apply(text);
        Files.writeString(folder.resolve("project.json"), changed, StandardCharsets.UTF_8);
        desk = new ProjectDesk(new AtOnce(), Clock.systemUTC());
        shell.setLayout(new FillLayout());
        shell.setSize(1280, 800);
    }

    static SectionStage closed(Path temp) throws IOException {
        return new SectionStage(temp.resolve("larkspur.ohmstead"), text -> text);
    }

    static SectionStage open(Path temp) throws IOException {
        return open(temp, text -> text);
    }

    /** Opens the demo project after its text was changed. */
    static SectionStage open(Path temp, UnaryOperator<String> change) throws IOException {
        SectionStage stage = new SectionStage(temp.resolve("larkspur.ohmstead"), change);
        stage.openProject();
        return stage;
    }

    void openProject() {
        List<Exception> failures = new ArrayList<>();
        desk.open(folder, Unsaved.REFUSE, opened -> {}, failures::add);
        waitFor(() -> desk.session().isPresent() || !failures.isEmpty());
        if (!failures.isEmpty()) {
            throw new AssertionError(failures.get(0));
        }
    }

    /** Puts a page into the shell and opens it. */
    SectionStage show(SectionPage page) {
        control = page.create(shell, desk);
        shell.open();
        pump();
        return this;
    }

    /** Puts a view into the shell and opens it. */
    <C extends Composite> C show(Function<Composite, C> view) {
        C made = view.apply(shell);
        shell.open();
        pump();
        return made;
    }

    void reveal(String where) {
        control.reveal(ProblemPlace.parse(where));
        pump();
    }

    Project project() {
        return desk.session().orElseThrow().project();
    }

    Optional<String> undoName() {
        return desk.session().flatMap(ProjectSession::undoName);
    }

    void undo() {
        desk.session().orElseThrow().undo();
        pump();
    }

    void redo() {
        desk.session().orElseThrow().redo();
        pump();
    }

    /** Waits until the desk tells of a problem at a place. */
    Problem problemAt(String where) {
        waitFor(() ->
                desk.problems().stream().anyMatch(problem -> problem.where().equals(where)));
        pump();
        return desk.problems().stream()
                .filter(problem -> problem.where().equals(where))
                .findFirst()
                .orElseThrow();
    }

    <W extends Widget> W find(String id, Class<W> type) {
        return Ids.find(shell, id, type);
    }

    /** Types into a field and presses Enter. */
    void type(String id, String text) {
        Text field = find(id, Text.class);
        field.setText(text);
        field.notifyListeners((field.getStyle() & SWT.MULTI) != 0 ? SWT.FocusOut : SWT.DefaultSelection, new Event());
        pump();
    }

    void choose(String id, String item) {
        Combo combo = find(id, Combo.class);
        combo.select(List.of(combo.getItems()).indexOf(item));
        combo.notifyListeners(SWT.Selection, new Event());
        pump();
    }

    void check(String id, boolean selected) {
        Button button = find(id, Button.class);
        button.setSelection(selected);
        button.notifyListeners(SWT.Selection, new Event());
        pump();
    }

    void press(String id) {
        Widget widget = find(id, Widget.class);
        boolean enabled = widget instanceof ToolItem item ? item.isEnabled() : ((Control) widget).isEnabled();
        if (!enabled) {
            throw new AssertionError(id + " cannot be pressed");
        }
        widget.notifyListeners(SWT.Selection, new Event());
        pump();
    }

    Table table(String id) {
        return find(id + ".table", Table.class);
    }

    EditTable<?> editTable(String id) {
        Composite parent = table(id).getParent();
        while (!(parent instanceof EditTable<?>)) {
            parent = parent.getParent();
        }
        return (EditTable<?>) parent;
    }

    void key(Control control, int keyCode) {
        Event event = new Event();
        event.keyCode = keyCode;
        event.doit = true;
        control.notifyListeners(SWT.KeyDown, event);
        pump();
    }

    void control(Control control, char letter) {
        Event event = new Event();
        event.keyCode = letter;
        event.stateMask = SWT.MOD1;
        event.doit = true;
        control.notifyListeners(SWT.KeyDown, event);
        pump();
    }

    /** Edits a cell as a user does: go there, F2, new text, Enter. */
    void edit(String table, int row, String column, String text) {
        editTable(table).select(row, column);
        pump();
        key(table(table), SWT.F2);
        if (!Ids.exists(shell, table + ".entry")) {
            return; // a check mark is set at once
        }
        Control entry = find(table + ".entry", Control.class);
        if (entry instanceof CCombo combo) {
            int index = List.of(combo.getItems()).indexOf(text);
            if (index < 0) {
                throw new AssertionError(text + " is none of " + List.of(combo.getItems()));
            }
            combo.select(index);
        } else {
            ((Text) entry).setText(text);
        }
        key(entry, SWT.CR);
    }

    void clipboard(String text) {
        Clipboard clipboard = new Clipboard(display);
        clipboard.setContents(new Object[] {text}, new Transfer[] {TextTransfer.getInstance()});
        clipboard.dispose();
    }

    String clipboard() {
        Clipboard clipboard = new Clipboard(display);
        Object contents = clipboard.getContents(TextTransfer.getInstance());
        clipboard.dispose();
        return (String) contents;
    }

    void pump() {
        while (display.readAndDispatch()) {
            continue;
        }
    }

    void waitFor(BooleanSupplier condition) {
        boolean[] late = {false};
        Runnable alarm = () -> late[0] = true;
        display.timerExec(DEADLINE_MILLISECONDS, alarm);
        while (!condition.getAsBoolean() && !late[0]) {
            if (!display.readAndDispatch()) {
                display.sleep();
            }
        }
        display.timerExec(-1, alarm);
        if (!condition.getAsBoolean()) {
            throw new AssertionError("the condition did not come true within " + DEADLINE_MILLISECONDS + " ms");
        }
    }

    @Override
    public void close() {
        shell.dispose();
        desk.dispose();
        pump();
    }
}
