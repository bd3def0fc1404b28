// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.function.Consumer;
import java.util.function.Supplier;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.KeyListener;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.testlog.ui.internal.SavedFilters.Saved;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;

/** The button with the menu of saved filters, and the row in which a filter is named. */
final class FilterMenu {
    private static final Messages TEXTS = Messages.of(FilterMenu.class);
    private static final int NAME_WIDTH = 220;

    private final Button button;
    private final SavedFilters filters;
    private final Consumer<Saved> use;
    private final Supplier<String> now;
    private final Composite row;
    private final Label question;
    private final Text name;
    private final Button commit;
    private Consumer<String> named = text -> {};

    /**
     * Makes both.
     *
     * @param bar where the button stands
     * @param below where the row stands, hidden until something is to be named
     * @param use is told which filter the user chose
     * @param now gives the query as it is now; empty when every entry is wanted
     */
    FilterMenu(Composite bar, Composite below, SavedFilters filters, Consumer<Saved> use, Supplier<String> now) {
        this.filters = filters;
        this.use = use;
        this.now = now;
        button = Ids.name(new Button(bar, SWT.PUSH), "log.filters");
        button.setData(FilterMenu.class.getName(), this);
        button.setText(TEXTS.text("filters.button"));
        button.setToolTipText(TEXTS.text("filters.button.hint"));
        button.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> open()));
        row = Ids.name(new Composite(below, SWT.NONE), "log.filters.row");
        Spacing.group(4).applyTo(row);
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(row);
        row.setVisible(false);
        question = new Label(row, SWT.NONE);
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(question);
        name = Ids.name(new Text(row, SWT.BORDER | SWT.SINGLE), "log.filters.name");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(NAME_WIDTH, SWT.DEFAULT)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(name);
        name.addModifyListener(event -> check());
        name.addKeyListener(KeyListener.keyPressedAdapter(event -> {
            if (event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR) {
                take();
            } else if (event.keyCode == SWT.ESC) {
                show(false);
            }
        }));
        commit = Ids.name(new Button(row, SWT.PUSH), "log.filters.commit");
        commit.setText(TEXTS.text("filters.commit"));
        commit.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> take()));
        Button cancel = Ids.name(new Button(row, SWT.PUSH), "log.filters.cancel");
        cancel.setText(TEXTS.text("filters.cancel"));
        cancel.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> show(false)));
    }

    private void open() {
        Menu menu = menu();
        menu.setLocation(button.toDisplay(0, button.getSize().y));
        menu.setVisible(true);
    }

    /** Returns the menu as it is now. */
    Menu menu() {
        Menu menu = new Menu(button);
        menu.addListener(SWT.Hide, event -> button.getDisplay().asyncExec(() -> {
            if (!menu.isDisposed()) {
                menu.dispose();
            }
        }));
        for (Saved saved : filters.all()) {
            MenuItem item = item(menu, saved.name(), () -> use.accept(saved));
            item.setToolTipText(saved.text());
            item.setEnabled(saved.usable());
        }
        new MenuItem(menu, SWT.SEPARATOR);
        MenuItem save = item(menu, TEXTS.text("filters.save"), this::askToSave);
        save.setEnabled(!now.get().isBlank());
        submenu(
                menu,
                TEXTS.text("filters.rename"),
                saved -> ask(TEXTS.text("filters.rename.as", saved.name()), saved.name(), text -> {
                    filters.rename(saved.name(), text);
                }));
        submenu(menu, TEXTS.text("filters.delete"), saved -> filters.delete(saved.name()));
        return menu;
    }

    private void submenu(Menu menu, String words, Consumer<Saved> action) {
        MenuItem parent = new MenuItem(menu, SWT.CASCADE);
        parent.setText(words);
        Menu below = new Menu(parent);
        parent.setMenu(below);
        filters.all().forEach(saved -> item(below, saved.name(), () -> action.accept(saved)));
        parent.setEnabled(!filters.all().isEmpty());
    }

    private static MenuItem item(Menu menu, String words, Runnable action) {
        MenuItem item = new MenuItem(menu, SWT.PUSH);
        item.setText(words.replace("&", "&&"));
        item.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> action.run()));
        return item;
    }

    private void askToSave() {
        String query = now.get();
        ask(TEXTS.text("filters.save.as"), "", text -> filters.add(new Saved(text, query)));
    }

    private void ask(String words, String start, Consumer<String> wanted) {
        named = wanted;
        question.setText(words.replace("&", "&&"));
        name.setText(start);
        name.selectAll();
        check();
        show(true);
        name.setFocus();
    }

    private void check() {
        commit.setEnabled(!name.getText().isBlank());
    }

    private void take() {
        if (commit.isEnabled()) {
            show(false);
            named.accept(name.getText().strip());
        }
    }

    private void show(boolean visible) {
        row.setVisible(visible);
        ((GridData) row.getLayoutData()).exclude = !visible;
        row.requestLayout();
        row.getParent().requestLayout();
    }
}
