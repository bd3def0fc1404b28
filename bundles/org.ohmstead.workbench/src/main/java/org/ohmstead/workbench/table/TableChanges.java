// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.ohmstead.units.text.Messages;

/** What can be done to whole rows; each is one change with one name. */
final class TableChanges<R> {
    private static final Messages TEXTS = Messages.of(TableChanges.class);

    private final EditTable<R> owner;
    private final TableSpec<R> spec;

    TableChanges(EditTable<R> owner) {
        this.owner = owner;
        spec = owner.spec();
    }

    boolean canAdd() {
        return !owner.readOnly() && spec.newRow().isPresent();
    }

    boolean canDuplicate() {
        return hasSelection() && spec.duplicate().isPresent();
    }

    boolean canRemove() {
        return hasSelection();
    }

    boolean canMove() {
        return hasSelection() && owner.lines().all().size() > 1;
    }

    private boolean hasSelection() {
        return !owner.readOnly() && owner.table().getSelectionCount() > 0;
    }

    /** Adds a row below the focused one, or at the end while the rows are sorted or filtered. */
    void add() {
        if (spec.newRow().isEmpty() || refusedWhileReadOnly()) {
            return;
        }
        List<R> rows = new ArrayList<>(owner.rows());
        R row = spec.newRow().get().apply(owner.rows());
        int at = owner.lines().original()
                ? owner.focus()
                        .line()
                        .map(line -> owner.lines().all().indexOf(line) + 1)
                        .orElse(rows.size())
                : rows.size();
        rows.add(at, row);
        if (owner.change(TEXTS.text("change.add", spec.singular()), rows)) {
            owner.chooseOriginal(List.of(at), firstEditable());
        }
    }

    private int firstEditable() {
        return IntStream.range(0, spec.columns().size())
                .filter(index -> spec.columns().get(index).edit().isPresent())
                .findFirst()
                .orElse(0);
    }

    /** Puts a copy of each selected row below the last of them. */
    void duplicate() {
        List<Integer> chosen = owner.chosenOriginal();
        if (chosen.isEmpty() || spec.duplicate().isEmpty() || refusedWhileReadOnly()) {
            return;
        }
        List<R> rows = new ArrayList<>(owner.rows());
        List<Integer> copies = new ArrayList<>();
        int at = Collections.max(chosen) + 1;
        for (int index : chosen) {
            rows.add(at, spec.duplicate().get().apply(owner.rows().get(index), List.copyOf(rows)));
            copies.add(at++);
        }
        if (owner.change(TEXTS.text("change.duplicate", spec.counted(chosen.size())), rows)) {
            owner.chooseOriginal(copies, owner.focus().column());
        }
    }

    /** Removes the selected rows and selects the one that takes their place. */
    void remove() {
        List<Line<R>> chosen = owner.chosen();
        if (chosen.isEmpty() || refusedWhileReadOnly()) {
            return;
        }
        int place = owner.lines().visible().indexOf(chosen.get(0));
        List<R> rows = owner.lines().all().stream()
                .filter(line -> !chosen.contains(line))
                .map(Line::row)
                .toList();
        if (owner.change(TEXTS.text("change.remove", spec.counted(chosen.size())), rows)) {
            List<Line<R>> visible = owner.lines().visible();
            if (!visible.isEmpty()) {
                owner.focus()
                        .go(
                                visible.get(Math.min(place, visible.size() - 1)),
                                owner.focus().column());
            }
        }
    }

    /** Moves the selected rows one place up (-1) or down (+1), as far as they go. */
    void move(int direction) {
        List<Integer> chosen = owner.chosenOriginal();
        if (chosen.isEmpty() || refusedWhileReadOnly()) {
            return;
        }
        if (!owner.lines().original()) {
            owner.mention(TEXTS.text("rows.sorted"));
            return;
        }
        List<R> rows = new ArrayList<>(owner.rows());
        List<Integer> order = new ArrayList<>(chosen);
        if (direction > 0) {
            Collections.reverse(order);
        }
        List<Integer> moved = new ArrayList<>();
        int border = direction < 0 ? 0 : rows.size() - 1;
        for (int index : order) {
            int to = direction < 0 ? Math.max(border, index - 1) : Math.min(border, index + 1);
            Collections.swap(rows, index, to);
            moved.add(to);
            border = to - direction;
        }
        moved.sort(null);
        String name = TEXTS.text(direction < 0 ? "change.up" : "change.down", spec.counted(chosen.size()));
        if (!moved.equals(chosen) && owner.change(name, rows)) {
            owner.chooseOriginal(moved, owner.focus().column());
        }
    }

    /** Copies the selected rows to the clipboard, as text that spreadsheets read. */
    void copy(boolean withHeader) {
        List<Line<R>> chosen = owner.chosen();
        if (chosen.isEmpty()) {
            return;
        }
        List<List<String>> cells = new ArrayList<>();
        if (withHeader) {
            cells.add(spec.columns().stream().map(Column::title).toList());
        }
        for (Line<R> line : chosen) {
            cells.add(spec.columns().stream()
                    .map(column -> column.copied(line.row()))
                    .toList());
        }
        CopiedTable.toClipboard(owner.getDisplay(), TabbedText.write(cells));
        owner.mention(TEXTS.text(withHeader ? "copied.header" : "copied.rows", spec.counted(chosen.size())));
    }

    /** Pastes the clipboard's text from the focused cell on. */
    void paste() {
        if (refusedWhileReadOnly()) {
            return;
        }
        Clipboard clipboard = new Clipboard(owner.getDisplay());
        Object contents = clipboard.getContents(TextTransfer.getInstance());
        clipboard.dispose();
        if (contents instanceof String text && !text.isBlank()) {
            paste(text);
        } else {
            owner.mention(TEXTS.text("paste.noText"));
        }
    }

    private void paste(String text) {
        int column = owner.focus().line().isPresent() ? owner.focus().column() : 0;
        PastedCells<R> pasted = new PastedCells<>(spec, TabbedText.read(text), column);
        List<Line<R>> visible = owner.lines().visible();
        Optional<Line<R>> focused = owner.focus().line();
        int from = focused.map(visible::indexOf).orElse(visible.size());
        int to = Math.min(visible.size(), from + pasted.rowCount());
        List<Integer> targets = new ArrayList<>(owner.originalIndices(visible.subList(from, to)));
        try {
            List<R> rows = pasted.into(owner.rows(), targets, column);
            IntStream.range(owner.rows().size(), rows.size()).forEach(targets::add);
            if (rows.equals(owner.rows())) {
                owner.mention(TEXTS.text("paste.same"));
            } else if (owner.change(TEXTS.text("change.paste", spec.counted(pasted.rowCount())), rows)) {
                owner.chooseOriginal(targets, column);
            }
        } catch (IllegalArgumentException refused) {
            owner.refuse(refused.getMessage());
        }
    }

    private boolean refusedWhileReadOnly() {
        if (owner.readOnly()) {
            owner.mentionReadOnly();
        }
        return owner.readOnly();
    }
}
