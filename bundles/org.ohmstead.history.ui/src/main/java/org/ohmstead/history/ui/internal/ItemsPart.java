// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.RowLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.KeyListener;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.history.HistoryException;
import org.ohmstead.history.Period;
import org.ohmstead.history.ui.internal.TextTable.Cell;
import org.ohmstead.history.ui.internal.TextTable.Head;
import org.ohmstead.history.ui.internal.TextTable.Line;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;

/** Chooses what is compared: the open project, others, and periods of them. */
final class ItemsPart {
    private static final Messages TEXTS = Messages.of(ItemsPart.class);

    private final Composite area;
    private final TextTable table;
    private final Text period;
    private final Button add;
    private final Button addPeriod;
    private final Button remove;
    private final Button first;
    private final MessageLine message;
    private final Supplier<Optional<Path>> folders;
    private final Consumer<List<CompareItem>> changed;
    private List<CompareItem> items = List.of(CompareItem.OPEN);

    /**
     * Makes the part.
     *
     * @param folders asks for a project's folder; empty when the user does not want one after all
     * @param changed hears what is compared from now on
     */
    ItemsPart(Composite parent, Supplier<Optional<Path>> folders, Consumer<List<CompareItem>> changed) {
        this.folders = folders;
        this.changed = changed;
        area = new Composite(parent, SWT.NONE);
        Spacing.tight(1).applyTo(area);
        table = new TextTable(
                area,
                "compare.items",
                List.of(Head.of("items.compared", false, 18), Head.of("items.period", false, 14)));
        GridDataFactory.fillDefaults().grab(true, true).hint(120, 60).applyTo(table.control());
        table.control().addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> enable()));
        table.control().addKeyListener(KeyListener.keyPressedAdapter(event -> {
            if (event.keyCode == SWT.DEL) {
                remove();
            }
        }));
        Composite buttons = new Composite(area, SWT.NONE);
        RowLayoutFactory.fillDefaults().wrap(true).spacing(Spacing.TIGHT).applyTo(buttons);
        GridDataFactory.fillDefaults().grab(true, false).hint(100, SWT.DEFAULT).applyTo(buttons);
        add = button(buttons, "compare.add", "items.add");
        add.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> addProject()));
        first = button(buttons, "compare.first", "items.first");
        first.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> makeFirst()));
        remove = button(buttons, "compare.remove", "items.remove");
        remove.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> remove()));
        Composite periods = new Composite(area, SWT.NONE);
        Spacing.tight(3).applyTo(periods);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(periods);
        Label label = new Label(periods, SWT.NONE);
        label.setText(TEXTS.text("items.when"));
        GridDataFactory.swtDefaults().align(SWT.BEGINNING, SWT.CENTER).applyTo(label);
        period = Ids.name(new Text(periods, SWT.BORDER | SWT.SINGLE), "compare.period");
        period.setMessage(TEXTS.text("items.when.empty"));
        period.setToolTipText(TEXTS.text("items.when.hint"));
        period.addListener(SWT.DefaultSelection, event -> addPeriod());
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(period);
        addPeriod = button(periods, "compare.addperiod", "items.when.add");
        addPeriod.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> addPeriod()));
        message = new MessageLine(area, "compare.items.message");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(message);
        show(items);
    }

    private static Button button(Composite parent, String id, String key) {
        Button button = Ids.name(new Button(parent, SWT.PUSH), id);
        button.setText(TEXTS.text(key));
        button.setToolTipText(TEXTS.text(key + ".hint"));
        return button;
    }

    Composite control() {
        return area;
    }

    boolean focus() {
        return !table.control().isDisposed() && table.control().setFocus();
    }

    /** Shows other things, without telling. */
    void show(List<CompareItem> newItems) {
        items = List.copyOf(newItems);
        table.show(this::lines);
        enable();
    }

    private List<Line> lines() {
        List<Line> lines = new ArrayList<>();
        for (CompareItem item : items) {
            lines.add(new Line(
                    key(item),
                    List.of(
                            Cell.of(
                                    item.source(),
                                    item.folder().map(Path::toString).orElseGet(() -> TEXTS.text("items.open.hint"))),
                            Cell.of(item.shortPeriod(), item.period().words()))));
        }
        return lines;
    }

    private static String key(CompareItem item) {
        return item.folder().map(Path::toString).orElse("") + "\n" + item.periodText();
    }

    private Optional<CompareItem> chosen() {
        return table.chosenKey()
                .flatMap(key ->
                        items.stream().filter(item -> key(item).equals(key)).findFirst());
    }

    private void enable() {
        boolean room = items.size() < CompareChoice.MOST;
        add.setEnabled(room);
        addPeriod.setEnabled(room);
        remove.setEnabled(chosen().isPresent() && items.size() > 1);
        first.setEnabled(chosen().filter(item -> !item.equals(items.get(0))).isPresent());
    }

    private void addProject() {
        folders.get()
                .map(folder -> folder.toAbsolutePath().normalize())
                .ifPresent(folder -> add(new CompareItem(Optional.of(folder), Period.ALWAYS)));
    }

    private void addPeriod() {
        CompareItem of = chosen().orElse(items.get(0));
        try {
            if (add(new CompareItem(of.folder(), Period.parse(period.getText())))) {
                period.setText("");
            }
        } catch (HistoryException refused) {
            message.show(Severity.ERROR, refused.getMessage());
            period.setFocus();
        }
    }

    private boolean add(CompareItem item) {
        if (items.contains(item)) {
            message.show(Severity.WARNING, TEXTS.text("items.already"));
            return false;
        }
        if (items.size() >= CompareChoice.MOST) {
            message.show(Severity.WARNING, TEXTS.text("items.most", Integer.toString(CompareChoice.MOST)));
            return false;
        }
        List<CompareItem> more = new ArrayList<>(items);
        more.add(item);
        tell(more);
        return true;
    }

    private void remove() {
        Optional<CompareItem> gone = chosen();
        if (gone.isPresent() && items.size() > 1) {
            List<CompareItem> fewer = new ArrayList<>(items);
            fewer.remove(gone.get());
            tell(fewer);
        }
    }

    private void makeFirst() {
        Optional<CompareItem> wanted = chosen();
        if (wanted.isPresent()) {
            List<CompareItem> other = new ArrayList<>(items);
            other.remove(wanted.get());
            other.add(0, wanted.get());
            tell(other);
        }
    }

    private void tell(List<CompareItem> newItems) {
        message.clear();
        show(newItems);
        changed.accept(items);
    }
}
