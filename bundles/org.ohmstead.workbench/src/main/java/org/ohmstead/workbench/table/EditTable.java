// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.Refusals;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;

/**
 * A table of immutable records that is edited in place. The widgets below it are named after the {@linkplain TableSpec#id() table's id}:
 * {@code .table}, {@code .entry} (the open editor), {@code .message}, {@code .empty}, {@code .filter}, {@code .count}, {@code .add},
 * {@code .duplicate}, {@code .remove}, {@code .up}, {@code .down}.
 *
 * @param <R> a row
 */
public final class EditTable<R> extends Composite {
    private static final Messages TEXTS = Messages.of(EditTable.class);

    private final TableSpec<R> spec;
    private final Lines<R> lines;
    private final List<CellLabels<R>> labels = new ArrayList<>();
    private final TableBody<R> body;
    private final TableTools<R> tools;
    private final CellFocus<R> focus;
    private final CellEntry<R> entry;
    private final MessageLine message;
    private RowsChange<R> changeHandler = (name, rows) -> {};
    private Consumer<List<R>> selectionHandler = rows -> {};
    private List<Line<R>> displayed = List.of();
    private boolean readOnly;
    private boolean refused;
    private int timesSet;

    /** Makes an empty table; the caller gives it layout data that fills. */
    public EditTable(Composite parent, TableSpec<R> spec) {
        super(parent, SWT.NONE);
        this.spec = spec;
        lines = new Lines<>(spec);
        Spacing.tight(1).applyTo(this);
        TableChanges<R> changes = new TableChanges<>(this);
        tools = new TableTools<>(this, changes);
        body = new TableBody<>(this, spec);
        body.columns(this::sortBy);
        for (int index = 0; index < spec.columns().size(); index++) {
            labels.add(new CellLabels<>(spec, index));
        }
        table().addListener(SWT.SetData, this::fill);
        new CellHover(table(), (row, column) -> labels.get(column).hover(displayed.get(row)));
        message = new MessageLine(this, spec.id() + ".message");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(message);
        focus = new CellFocus<>(table(), () -> displayed, this::focusMoved);
        entry = new CellEntry<>(this);
        new TableKeys<>(this, changes, tools);
        tools.menu(changes, () -> startEdit(Optional.empty()), () -> sortBy(focus.column()));
        table().addListener(SWT.MouseDoubleClick, this::doubleClicked);
        display(Set.of());
    }

    /** Shows rows; selection, scroll position and an open editor stay with their rows. */
    public void setRows(List<R> newRows) {
        timesSet++;
        display(lines.replace(List.copyOf(newRows)));
    }

    /** Draws all rows anew: for texts that follow something besides the rows, such as the user's decimal sign. */
    public void refresh() {
        lines.arrange();
        display(Set.of());
        table().clearAll();
    }

    /** Returns all rows in the original order. */
    public List<R> rows() {
        return lines.rows();
    }

    /** Has the owner told of each change. The owner may call {@link #setRows} from within; else the table shows the new rows itself. */
    public void onChange(RowsChange<R> handler) {
        changeHandler = handler;
    }

    /** Has someone told of the selected rows whenever they change. */
    public void onSelection(Consumer<List<R>> handler) {
        selectionHandler = handler;
    }

    /** Lets the user change rows or not; looking, filtering, sorting and copying always work. */
    public void setReadOnly(boolean newReadOnly) {
        if (newReadOnly && entry.open()) {
            entry.cancel();
        }
        readOnly = newReadOnly;
        clearMessage();
        tools.update();
        body.empty(emptyText());
    }

    /** Marks cells with what is said about them outside the table; those before are taken away. */
    public void setMarks(List<CellMark> marks) {
        Map<Integer, List<CellMark>> byRow = marks.stream().collect(Collectors.groupingBy(CellMark::rowIndex));
        Set<Line<R>> changed = Collections.newSetFromMap(new IdentityHashMap<>());
        for (int index = 0; index < lines.all().size(); index++) {
            Line<R> line = lines.all().get(index);
            List<CellMark> its = byRow.getOrDefault(index, List.of());
            boolean same = its.stream()
                    .map(CellMark::mark)
                    .toList()
                    .equals(line.marks().stream().map(CellMark::mark).toList());
            line.setMarks(its);
            if (!same) {
                changed.add(line);
            }
        }
        draw(changed);
        focusMoved();
    }

    /** Reveals a row, selects it, and gives its cell in a column the focus; an unknown column stands for the first. */
    public void select(int rowIndex, String columnId) {
        if (rowIndex < 0 || rowIndex >= lines.all().size()) {
            throw new IllegalArgumentException("rowIndex is " + rowIndex + "; it must lie between 0 and "
                    + (lines.all().size() - 1));
        }
        Line<R> line = lines.all().get(rowIndex);
        if (!lines.visible().contains(line)) {
            tools.clearFilter();
        }
        table().setFocus();
        focus.go(line, Math.max(0, spec.columnIndex(columnId)));
    }

    /** Returns the selected rows in the order in which they stand. */
    public List<R> selection() {
        return chosen().stream().map(Line::row).toList();
    }

    /** Commits an open editor. Returns false when its text is refused; the message then says why. */
    public boolean settled() {
        boolean settled = entry.commit();
        if (!settled) {
            Ids.find(table(), spec.id() + ".entry", Control.class).setFocus();
        }
        return settled;
    }

    /** Returns what is said below the table; empty text when nothing is. */
    public String message() {
        return message.text();
    }

    @Override
    public boolean setFocus() {
        return table().setFocus();
    }

    Table table() {
        return body.table();
    }

    List<Line<R>> displayed() {
        return displayed;
    }

    TableSpec<R> spec() {
        return spec;
    }

    Lines<R> lines() {
        return lines;
    }

    CellFocus<R> focus() {
        return focus;
    }

    boolean readOnly() {
        return readOnly;
    }

    /** Reports a change and shows it, or shows why it was refused. Returns whether it was taken. */
    boolean change(String name, List<R> newRows) {
        try {
            tryChange(name, newRows);
            clearMessage();
            return true;
        } catch (IllegalArgumentException refusal) {
            refuse(Refusals.sentence(refusal));
            return false;
        }
    }

    /** Reports a change and shows it; throws what the owner throws to refuse it. */
    void tryChange(String name, List<R> newRows) {
        int before = timesSet;
        changeHandler.accept(name, List.copyOf(newRows));
        if (timesSet == before) {
            setRows(newRows);
        }
    }

    List<R> rowsWith(Line<R> line, R changed) {
        return lines.all().stream()
                .map(each -> each == line ? changed : each.row())
                .toList();
    }

    void refuse(String sentence) {
        refused = true;
        message.show(Severity.ERROR, sentence);
    }

    void mention(String sentence) {
        refused = false;
        message.mention(sentence);
    }

    void mentionReadOnly() {
        mention(TEXTS.text("rows.readOnly", spec.plural()));
    }

    void clearMessage() {
        refused = false;
        focusMoved();
    }

    void startEdit(Optional<String> typed) {
        Optional<Line<R>> line = focus.line();
        if (readOnly) {
            mentionReadOnly();
        } else if (line.isPresent()) {
            entry.start(line.get(), focus.column(), typed);
        }
    }

    Optional<CellEdit.Kind> focusedKind() {
        return spec.columns().get(focus.column()).edit().map(CellEdit::kind);
    }

    void keep(Line<R> line) {
        lines.keep(line);
    }

    void filter(String text) {
        lines.filter(text);
        display(Set.of());
    }

    void sortBy(int column) {
        lines.sortBy(column);
        body.sorted(lines.sortColumn(), lines.descending());
        display(Set.of());
    }

    void selectAll() {
        table().selectAll();
        focusMoved();
    }

    /** Returns the selected lines in the order in which they stand. */
    List<Line<R>> chosen() {
        return focus.chosen();
    }

    List<Integer> chosenOriginal() {
        return originalIndices(chosen()).stream().sorted().toList();
    }

    List<Integer> originalIndices(List<Line<R>> some) {
        Map<Line<R>, Integer> places = new IdentityHashMap<>();
        for (int index = 0; index < lines.all().size(); index++) {
            places.put(lines.all().get(index), index);
        }
        return some.stream().map(places::get).toList();
    }

    /** Selects rows by their places in the original order, brings them in sight, and gives the first of them the focus. */
    void chooseOriginal(List<Integer> indices, int column) {
        List<Line<R>> wanted = indices.stream()
                .filter(index -> index < lines.all().size())
                .map(lines.all()::get)
                .toList();
        if (wanted.isEmpty()) {
            return;
        }
        wanted.forEach(lines::keep);
        lines.arrange();
        display(Set.of());
        focus.go(wanted.get(0), column);
        focus.choose(wanted);
        focusMoved();
    }

    private void doubleClicked(Event event) {
        if (event.button == 1 && focus.columnAt(event.x, event.y) >= 0) {
            startEdit(Optional.empty());
        }
    }

    private void focusMoved() {
        tools.update();
        if (!refused) {
            Optional<Mark> mark =
                    focus.line().flatMap(line -> labels.get(focus.column()).worst(line));
            if (mark.isPresent()) {
                message.show(mark.get().severity(), mark.get().sentence());
            } else if (readOnly) {
                mentionReadOnly();
            } else {
                message.clear();
            }
        }
        selectionHandler.accept(selection());
    }

    private void display(Set<Line<R>> changed) {
        if (displayed.equals(lines.visible())) {
            draw(changed);
        } else {
            int top = table().getTopIndex();
            List<Line<R>> chosen = focus.chosen();
            displayed = lines.visible();
            if (displayed.size() < table().getItemCount()) {
                // Taking all rows away at once is far faster than one by one.
                table().removeAll();
            }
            table().setItemCount(displayed.size());
            table().clearAll();
            focus.choose(chosen);
            table().setTopIndex(top);
        }
        entry.attach();
        body.empty(emptyText());
        focusMoved();
    }

    /** Draws lines anew where they stand. */
    private void draw(Set<Line<R>> changed) {
        for (int index = 0; !changed.isEmpty() && index < displayed.size(); index++) {
            if (changed.contains(displayed.get(index))) {
                table().clear(index);
            }
        }
    }

    private void fill(Event event) {
        if (event.index < 0 || event.index >= displayed.size()) {
            // GTK still asks for rows that it is about to drop.
            return;
        }
        Line<R> line = displayed.get(event.index);
        TableItem item = (TableItem) event.item;
        for (int column = 0; column < labels.size(); column++) {
            item.setText(column, labels.get(column).text(line));
            Image image = labels.get(column).image(line);
            if (image != item.getImage(column)) {
                // Setting none where there is none would still make room for one in the whole column.
                item.setImage(column, image);
            }
        }
    }

    private String emptyText() {
        if (!lines.all().isEmpty()) {
            return lines.visible().isEmpty()
                    ? TEXTS.text(
                            "empty.filtered", Integer.toString(lines.all().size()), spec.plural(), tools.filterText())
                    : "";
        }
        boolean addable = !readOnly && spec.newRow().isPresent();
        return TEXTS.text(addable ? "empty.addable" : "empty.none", spec.plural());
    }
}
