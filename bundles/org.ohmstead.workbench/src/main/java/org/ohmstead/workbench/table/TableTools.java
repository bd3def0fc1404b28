// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.PixelConverter;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.ToolBar;
import org.eclipse.swt.widgets.ToolItem;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Icons;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** The row above the table: buttons, filter, count; and the context menu with the same and more. */
final class TableTools<R> {
    private static final Messages TEXTS = Messages.of(TableTools.class);
    private static final int FILTER_CHARS = 22;
    private static final int LEAST_COUNT_CHARS = 14;

    private final EditTable<R> owner;
    private final List<Runnable> updates = new ArrayList<>();
    private final Text filter;
    private final Label count;

    TableTools(EditTable<R> owner, TableChanges<R> changes) {
        this.owner = owner;
        TableSpec<R> spec = owner.spec();
        Composite row = new Composite(owner, SWT.NONE);
        Spacing.group(3).applyTo(row);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(row);
        ToolBar bar = Ids.name(new ToolBar(row, SWT.FLAT | SWT.HORIZONTAL), spec.id() + ".tools");
        GridDataFactory.swtDefaults().grab(true, false).applyTo(bar);
        button(bar, "add", TEXTS.text("tool.add", spec.singular()), changes::add, changes::canAdd);
        button(bar, "duplicate", TEXTS.text("tool.duplicate"), changes::duplicate, changes::canDuplicate);
        button(bar, "remove", TEXTS.text("tool.remove"), changes::remove, changes::canRemove);
        new ToolItem(bar, SWT.SEPARATOR);
        button(bar, "up", TEXTS.text("tool.up"), () -> changes.move(-1), changes::canMove);
        button(bar, "down", TEXTS.text("tool.down"), () -> changes.move(1), changes::canMove);
        count = Ids.name(new Label(row, SWT.RIGHT), spec.id() + ".count");
        count.setForeground(Tones.of(owner).mutedText());
        GridDataFactory.fillDefaults()
                .align(SWT.FILL, SWT.CENTER)
                .hint(
                        new PixelConverter(count).convertWidthInCharsToPixels(countCharacters(spec.plural())),
                        SWT.DEFAULT)
                .applyTo(count);
        filter = Ids.name(new Text(row, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL), spec.id() + ".filter");
        filter.setMessage(TEXTS.text("filter.message"));
        filter.setToolTipText(TEXTS.text("filter.hint"));
        GridDataFactory.fillDefaults()
                .align(SWT.FILL, SWT.CENTER)
                .hint(new PixelConverter(filter).convertWidthInCharsToPixels(FILTER_CHARS), SWT.DEFAULT)
                .applyTo(filter);
        filter.addListener(SWT.Modify, event -> owner.filter(filter.getText()));
        filter.addListener(SWT.KeyDown, this::filterKey);
    }

    private void button(ToolBar bar, String name, String tip, Runnable action, BooleanSupplier enabled) {
        ToolItem item = Ids.name(new ToolItem(bar, SWT.PUSH), owner.spec().id() + "." + name);
        item.setImage(Icons.image("table-" + name));
        item.setToolTipText(tip);
        item.addListener(SWT.Selection, event -> {
            if (owner.settled()) {
                action.run();
                owner.table().setFocus();
            }
        });
        updates.add(() -> item.setEnabled(enabled.getAsBoolean()));
    }

    private void filterKey(Event event) {
        if (event.keyCode == SWT.ESC && !filter.getText().isEmpty()) {
            clearFilter();
            event.doit = false;
        } else if (event.keyCode == SWT.ESC || event.keyCode == SWT.CR || event.keyCode == SWT.ARROW_DOWN) {
            owner.table().setFocus();
            event.doit = false;
        }
    }

    void focusFilter() {
        filter.setFocus();
        filter.selectAll();
    }

    void clearFilter() {
        filter.setText("");
    }

    /** Room for a number of four digits and the word. */
    private static int countCharacters(String plural) {
        return Math.max(LEAST_COUNT_CHARS, "1234 ".length() + plural.length());
    }

    String filterText() {
        return filter.getText().strip();
    }

    /** Brings buttons and count up to date. */
    void update() {
        updates.forEach(Runnable::run);
        int all = owner.lines().all().size();
        int shown = owner.lines().visible().size();
        String whole = all == 0
                ? ""
                : all == 1 ? "1 " + owner.spec().singular() : owner.spec().counted(all);
        count.setText(
                owner.lines().filtered()
                        ? TEXTS.text("count.shown", Integer.toString(shown), Integer.toString(all))
                        : whole);
    }

    /** Makes the context menu of the table. */
    void menu(TableChanges<R> changes, Runnable edit, Runnable sort) {
        Menu menu = new Menu(owner.table());
        owner.table().setMenu(menu);
        owner.table().addListener(SWT.Dispose, event -> menu.dispose());
        entry(menu, TEXTS.text("menu.edit"), edit, changes::canRemove);
        new MenuItem(menu, SWT.SEPARATOR);
        entry(menu, TEXTS.text("menu.add", owner.spec().singular()), changes::add, changes::canAdd);
        entry(menu, TEXTS.text("menu.duplicate"), changes::duplicate, changes::canDuplicate);
        entry(menu, TEXTS.text("menu.remove"), changes::remove, changes::canRemove);
        entry(menu, TEXTS.text("menu.up"), () -> changes.move(-1), changes::canMove);
        entry(menu, TEXTS.text("menu.down"), () -> changes.move(1), changes::canMove);
        new MenuItem(menu, SWT.SEPARATOR);
        BooleanSupplier selected = () -> owner.table().getSelectionCount() > 0;
        entry(menu, TEXTS.text("menu.copy"), () -> changes.copy(false), selected);
        entry(menu, TEXTS.text("menu.copyHeader"), () -> changes.copy(true), selected);
        entry(menu, TEXTS.text("menu.paste"), changes::paste, () -> !owner.readOnly());
        new MenuItem(menu, SWT.SEPARATOR);
        entry(menu, TEXTS.text("menu.sort"), sort, () -> true);
        entry(menu, TEXTS.text("menu.filter"), this::focusFilter, () -> true);
        menu.addListener(SWT.Show, event -> update());
    }

    private void entry(Menu menu, String text, Runnable action, BooleanSupplier enabled) {
        MenuItem item = new MenuItem(menu, SWT.PUSH);
        item.setText(text);
        item.addListener(SWT.Selection, event -> {
            if (owner.settled()) {
                action.run();
            }
        });
        updates.add(() -> item.setEnabled(enabled.getAsBoolean()));
    }
}
