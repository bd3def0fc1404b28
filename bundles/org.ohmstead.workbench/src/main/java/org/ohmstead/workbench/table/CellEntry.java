// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CCombo;
import org.eclipse.swt.custom.TableEditor;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Listener;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.Refusals;
import org.ohmstead.workbench.look.Icons;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Labels;
import org.ohmstead.workbench.look.Numbers;

/** The editor that opens in a cell. What is refused stays in it, marked, until it is mended or given up with Escape. */
final class CellEntry<R> {
    private static final Messages TEXTS = Messages.of(CellEntry.class);
    private static final int LEAST_WIDTH = 80;

    private final EditTable<R> owner;
    private final TableEditor editor;
    private Line<R> line;
    private int column;
    private CellEdit<R> edit;
    private Composite frame;
    private Label sign;
    private Control entry;
    private String opened = "";
    private boolean busy;
    private boolean leaving;

    CellEntry(EditTable<R> owner) {
        this.owner = owner;
        editor = new TableEditor(owner.table());
        editor.grabHorizontal = true;
    }

    boolean open() {
        return frame != null;
    }

    /**
     * Opens the editor of a cell, after committing the one that is open.
     *
     * @param typed what the user began to type; empty to begin with the text of the cell
     */
    void start(Line<R> newLine, int newColumn, Optional<String> typed) {
        if (!commit()) {
            entry.setFocus();
            return;
        }
        Column<R> definition = owner.spec().columns().get(newColumn);
        if (definition.edit().isEmpty()) {
            owner.mention(TEXTS.text("cell.follows", definition.header()));
            return;
        }
        line = newLine;
        column = newColumn;
        edit = definition.edit().get();
        String text = edit.text().apply(line.row());
        opened = definition.alignRight() ? Numbers.localised(text) : text;
        if (edit.kind() == CellEdit.Kind.CHECK) {
            put(opened.equals(CellEdit.yes()) ? CellEdit.no() : CellEdit.yes());
            return;
        }
        owner.keep(line);
        owner.table().showColumn(owner.table().getColumn(column));
        build(definition);
        int width = owner.table().getColumn(column).getWidth();
        editor.minimumWidth = Math.max(width, LEAST_WIDTH);
        // The cell without its icon is what the editor would get; aligned to the right it covers the icon's place too.
        editor.horizontalAlignment = width < LEAST_WIDTH ? SWT.LEFT : SWT.RIGHT;
        editor.minimumHeight = frame.computeSize(SWT.DEFAULT, SWT.DEFAULT).y;
        attach();
        entry.setFocus();
        begin(typed);
    }

    private void begin(Optional<String> typed) {
        if (entry instanceof Text text) {
            text.setText(typed.orElse(opened));
            if (typed.isPresent()) {
                text.setSelection(text.getCharCount());
            } else {
                text.selectAll();
            }
        } else if (entry instanceof CCombo combo) {
            combo.setText(opened);
            typed.map(each -> each.toLowerCase(Locale.ROOT)).ifPresent(start -> {
                List<String> items = List.of(combo.getItems());
                items.stream()
                        .filter(item -> item.toLowerCase(Locale.ROOT).startsWith(start))
                        .findFirst()
                        .ifPresent(item -> combo.select(items.indexOf(item)));
            });
        }
    }

    private void build(Column<R> definition) {
        Table table = owner.table();
        frame = new Composite(table, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(2).spacing(0, 0).applyTo(frame);
        sign = new Label(frame, SWT.NONE);
        sign.setImage(Icons.of(Severity.ERROR));
        sign.setVisible(false);
        GridDataFactory.swtDefaults().exclude(true).applyTo(sign);
        if (edit.kind() == CellEdit.Kind.CHOICE) {
            CCombo combo = new CCombo(frame, SWT.READ_ONLY | SWT.FLAT);
            combo.setItems(edit.choices().apply(line.row()).toArray(String[]::new));
            entry = combo;
            commitOnMouseChoice(combo);
        } else {
            entry = new Text(frame, SWT.SINGLE | (definition.alignRight() ? SWT.RIGHT : SWT.LEFT));
        }
        entry.setFont(table.getFont());
        Ids.name(entry, owner.spec().id() + ".entry");
        GridDataFactory.fillDefaults().grab(true, true).applyTo(entry);
        entry.addListener(SWT.Traverse, this::traversed);
        entry.addListener(SWT.KeyDown, this::keyPressed);
        entry.addListener(SWT.FocusOut, event -> left());
    }

    /** A choice made with the mouse is final; one made with the arrow keys waits for Enter. */
    private void commitOnMouseChoice(CCombo combo) {
        Display display = combo.getDisplay();
        Listener released = event -> {
            if (event.widget instanceof org.eclipse.swt.widgets.List) {
                display.asyncExec(() -> {
                    if (entry == combo && !combo.isDisposed() && !combo.getListVisible()) {
                        finish(0);
                    }
                });
            }
        };
        display.addFilter(SWT.MouseUp, released);
        combo.addListener(SWT.Dispose, event -> display.removeFilter(SWT.MouseUp, released));
    }

    /** The user went elsewhere: the focus stays there. */
    private void left() {
        leaving = true;
        commit();
        leaving = false;
    }

    private void traversed(Event event) {
        if (event.detail == SWT.TRAVERSE_TAB_NEXT || event.detail == SWT.TRAVERSE_TAB_PREVIOUS) {
            event.doit = false;
            goOn(event.detail == SWT.TRAVERSE_TAB_NEXT ? 1 : -1);
        } else if (event.detail == SWT.TRAVERSE_RETURN || event.detail == SWT.TRAVERSE_ESCAPE) {
            event.doit = false;
        }
    }

    private void keyPressed(Event event) {
        if (event.keyCode == SWT.ESC) {
            event.doit = false;
            cancel();
        } else if (event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR) {
            event.doit = false;
            finish((event.stateMask & SWT.SHIFT) != 0 ? -1 : 1);
        }
    }

    /** Commits and goes so many rows down; stays when refused. */
    private void finish(int rowsDown) {
        Line<R> from = line;
        int at = column;
        int index = owner.lines().visible().indexOf(from) + rowsDown;
        List<Line<R>> before = owner.lines().visible();
        if (!commit()) {
            return;
        }
        Line<R> wanted = index >= 0 && index < before.size() ? before.get(index) : from;
        owner.table().setFocus();
        if (owner.lines().visible().contains(wanted)) {
            owner.focus().go(wanted, at);
        }
    }

    /** Commits and opens the next cell that can be typed into or chosen; after the last one the table has the focus. */
    private void goOn(int direction) {
        int width = owner.spec().columns().size();
        List<Line<R>> before = owner.lines().visible();
        int cell = before.indexOf(line) * width + column;
        if (!commit()) {
            return;
        }
        owner.table().setFocus();
        for (int next = cell + direction; next >= 0 && next < before.size() * width; next += direction) {
            Line<R> nextLine = before.get(next / width);
            Optional<CellEdit<R>> nextEdit =
                    owner.spec().columns().get(next % width).edit();
            if (nextEdit.isPresent() && owner.lines().visible().contains(nextLine)) {
                owner.focus().go(nextLine, next % width);
                if (nextEdit.get().kind() != CellEdit.Kind.CHECK) {
                    start(nextLine, next % width, Optional.empty());
                }
                return;
            }
        }
    }

    /** Closes the editor without a change. */
    void cancel() {
        close();
        owner.clearMessage();
        owner.table().setFocus();
    }

    /** Takes over what was typed. Returns false when it was refused: the editor is then still open. */
    boolean commit() {
        if (frame == null || busy) {
            return frame == null;
        }
        String typed = entry instanceof Text text ? text.getText() : ((CCombo) entry).getText();
        if (typed.equals(opened)) {
            close();
            owner.clearMessage();
            return true;
        }
        return put(typed);
    }

    private boolean put(String typed) {
        busy = true;
        try {
            R changed = edit.with().apply(line.row(), typed);
            if (!changed.equals(line.row())) {
                owner.tryChange(editName(), owner.rowsWith(line, changed));
            }
        } catch (IllegalArgumentException refused) {
            refuse(typed, refused);
            return false;
        } finally {
            busy = false;
        }
        close();
        owner.clearMessage();
        return true;
    }

    private String editName() {
        Column<R> changed = owner.spec().columns().get(column);
        return owner.spec()
                .editNames()
                .map(names -> names.apply(changed.id()))
                .orElseGet(
                        () -> TEXTS.text("change.cell", owner.spec().singular(), Labels.inSentence(changed.header())));
    }

    private void refuse(String typed, IllegalArgumentException refused) {
        String reason = Refusals.sentence(refused);
        String what = Refusals.quotes(reason) ? reason : TEXTS.text("cell.unfit", typed.strip(), reason);
        String sentence = owner.spec().columns().get(column).header() + ": " + what;
        owner.refuse(sentence);
        if (frame != null) {
            sign.setVisible(true);
            sign.setToolTipText(sentence);
            entry.setToolTipText(sentence);
            ((GridData) sign.getLayoutData()).exclude = false;
            frame.layout();
        }
    }

    /** Puts the editor where its line stands now; gives it up when the line is gone. */
    void attach() {
        if (frame == null) {
            return;
        }
        int index = owner.displayed().indexOf(line);
        if (index >= 0) {
            editor.setEditor(frame, owner.table().getItem(index), column);
        } else {
            close();
        }
    }

    private void close() {
        if (frame != null) {
            Composite closing = frame;
            frame = null;
            editor.setEditor(null, null, 0);
            boolean focused = entry.isFocusControl();
            entry = null;
            if (leaving) {
                // A widget that is disposed of while it loses the focus would draw the focus to its parent.
                closing.getDisplay().asyncExec(closing::dispose);
                return;
            }
            closing.dispose();
            if (focused) {
                owner.table().setFocus();
            }
        }
    }
}
