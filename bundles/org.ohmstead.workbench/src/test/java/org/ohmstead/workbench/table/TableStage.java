// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Widget;
import org.ohmstead.workbench.look.Ids;

/** A table of claims in a bare shell, with the changes that it reported. */
final class TableStage implements AutoCloseable {
    private static final int DEADLINE_MILLISECONDS = 5000;

    final Display display = Display.getDefault();
    final Shell shell = new Shell(display);
    final EditTable<Claim> table;
    final List<String> names = new ArrayList<>();

    TableStage(Claim... rows) {
        shell.setLayout(new FillLayout());
        shell.setSize(1000, 420);
        table = new EditTable<>(shell, Claim.spec());
        table.onChange((name, newRows) -> names.add(name));
        table.setRows(List.of(rows));
        shell.open();
        table.setFocus();
        waitFor(() -> table.table().isFocusControl());
    }

    @Override
    public void close() {
        shell.dispose();
        pump();
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
        if (late[0]) {
            throw new AssertionError("the condition did not come true within " + DEADLINE_MILLISECONDS + " ms");
        }
    }

    /** Presses a key where the table, or the open editor, hears it. */
    Event press(int modifiers, int keyCode, char character) {
        Control where = editing() ? entry(Control.class) : table.table();
        Event event = new Event();
        event.stateMask = modifiers;
        event.keyCode = keyCode;
        event.character = character;
        event.doit = true;
        where.notifyListeners(SWT.KeyDown, event);
        pump();
        return event;
    }

    void press(int keyCode) {
        press(0, keyCode, (char) 0);
    }

    void enter() {
        press(0, SWT.CR, SWT.CR);
    }

    void tab(boolean forward) {
        Event event = new Event();
        event.detail = forward ? SWT.TRAVERSE_TAB_NEXT : SWT.TRAVERSE_TAB_PREVIOUS;
        event.doit = true;
        entry(Control.class).notifyListeners(SWT.Traverse, event);
        pump();
    }

    void type(String text) {
        entry(Text.class).setText(text);
    }

    boolean editing() {
        return Ids.exists(table, "claims.entry");
    }

    <W extends Widget> W entry(Class<W> type) {
        return Ids.find(table, "claims.entry", type);
    }

    <W extends Widget> W find(String name, Class<W> type) {
        return Ids.find(table, "claims." + name, type);
    }

    String cell(int row, int column) {
        return table.table().getItem(row).getText(column);
    }

    List<String> shownNames() {
        List<String> shown = new ArrayList<>();
        for (int row = 0; row < table.table().getItemCount(); row++) {
            shown.add(cell(row, 0));
        }
        return shown;
    }

    List<String> selectedNames() {
        return table.selection().stream().map(Claim::name).toList();
    }
}
