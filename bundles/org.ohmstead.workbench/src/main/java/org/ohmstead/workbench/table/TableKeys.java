// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Event;

/** What the keys do while the table has the focus and no editor is open. */
final class TableKeys<R> {
    private final EditTable<R> owner;
    private final Map<Integer, Runnable> actions = new HashMap<>();

    TableKeys(EditTable<R> owner, TableChanges<R> changes, TableTools<R> tools) {
        this.owner = owner;
        actions.put((int) SWT.CR, () -> owner.startEdit(Optional.empty()));
        actions.put(SWT.KEYPAD_CR, () -> owner.startEdit(Optional.empty()));
        actions.put(SWT.F2, () -> owner.startEdit(Optional.empty()));
        actions.put((int) SWT.BS, () -> owner.startEdit(Optional.of("")));
        actions.put(SWT.INSERT, changes::add);
        actions.put((int) SWT.DEL, changes::remove);
        actions.put((int) SWT.ESC, owner::clearMessage);
        actions.put(SWT.ARROW_LEFT, () -> owner.focus().goColumn(owner.focus().column() - 1));
        actions.put(SWT.ARROW_RIGHT, () -> owner.focus().goColumn(owner.focus().column() + 1));
        actions.put(SWT.HOME, () -> owner.focus().goColumn(0));
        actions.put(SWT.END, () -> owner.focus().goColumn(owner.spec().columns().size() - 1));
        actions.put(SWT.ALT | SWT.ARROW_UP, () -> changes.move(-1));
        actions.put(SWT.ALT | SWT.ARROW_DOWN, () -> changes.move(1));
        actions.put(SWT.MOD1 | 'a', owner::selectAll);
        actions.put(SWT.MOD1 | 'c', () -> changes.copy(false));
        actions.put(SWT.MOD1 | SWT.SHIFT | 'c', () -> changes.copy(true));
        actions.put(SWT.MOD1 | 'v', changes::paste);
        actions.put(SWT.MOD1 | 'd', changes::duplicate);
        actions.put(SWT.MOD1 | 'f', tools::focusFilter);
        actions.put(SWT.MOD1 | SWT.SHIFT | 's', () -> owner.sortBy(owner.focus().column()));
        owner.table().addListener(SWT.KeyDown, this::pressed);
    }

    private void pressed(Event event) {
        int modifiers = event.stateMask & SWT.MODIFIER_MASK;
        Runnable action = actions.get(modifiers | event.keyCode);
        boolean plain = (modifiers & ~(SWT.SHIFT | SWT.ALT_GR)) == 0;
        if (action != null) {
            event.doit = false;
            if (owner.settled()) {
                action.run();
            }
        } else if (plain && event.character == ' ' && owner.focusedKind().equals(Optional.of(CellEdit.Kind.CHECK))) {
            event.doit = false;
            owner.startEdit(Optional.empty());
        } else if (plain && event.character > ' ' && event.character != SWT.DEL) {
            event.doit = false;
            owner.startEdit(Optional.of(String.valueOf(event.character)));
        }
    }
}
