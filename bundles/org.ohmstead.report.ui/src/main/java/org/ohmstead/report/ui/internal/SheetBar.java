// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** The line at the top: publish, export, and how the preview stands. */
final class SheetBar {
    private static final int STATE_WIDTH = 80;

    /** What the buttons do. */
    interface Actions {
        /** Publishes the sheet. */
        void publish();

        /** Exports in one form, to a file that the user chooses. */
        void export(ExportForm form);
    }

    private final Button publish;
    private final Button export;
    private final Label state;

    SheetBar(Composite parent, Actions actions) {
        Composite bar = new Composite(parent, SWT.NONE);
        Spacing.group(3).applyTo(bar);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar);
        publish = Ids.name(new Button(bar, SWT.PUSH), "sheet.publish");
        publish.setText(Texts.say("bar.publish"));
        publish.setToolTipText(Texts.say("bar.publish.hint"));
        publish.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> actions.publish()));
        export = Ids.name(new Button(bar, SWT.PUSH), "sheet.export");
        export.setText(Texts.say("bar.export"));
        export.setToolTipText(Texts.say("bar.export.hint"));
        Menu menu = menu(actions);
        // A menu that pops up by hand belongs to the window, which would keep it and all that it calls.
        export.addDisposeListener(event -> menu.dispose());
        export.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
            Point size = export.getSize();
            menu.setLocation(export.toDisplay(0, size.y));
            menu.setVisible(true);
        }));
        state = Ids.name(new Label(bar, SWT.NONE), "sheet.state");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .hint(STATE_WIDTH, SWT.DEFAULT)
                .applyTo(state);
    }

    private Menu menu(Actions actions) {
        Menu menu = Ids.name(new Menu(export), "sheet.export.menu");
        for (ExportForm form : ExportForm.values()) {
            MenuItem item = Ids.name(
                    new MenuItem(menu, SWT.PUSH),
                    "sheet.export." + form.ending().substring(1));
            item.setText(form.menuText());
            item.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> actions.export(form)));
        }
        return menu;
    }

    void allow(boolean allowed) {
        publish.setEnabled(allowed);
        export.setEnabled(allowed);
    }

    /** Says how the preview stands; emphasized when the user should notice. */
    void state(String words, boolean emphasized) {
        Tones tones = Tones.of(state);
        state.setForeground(emphasized ? tones.warning() : tones.mutedText());
        if (!words.equals(state.getText())) {
            state.setText(words);
            state.setToolTipText(words.isEmpty() ? null : words);
        }
    }

    String state() {
        return state.getText();
    }
}
