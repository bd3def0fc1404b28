// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.List;
import java.util.stream.Collectors;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.KeyListener;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** Asks, in its place below the table, why entries are taken back and by whom. */
final class VoidPanel {
    private static final Messages TEXTS = Messages.of(VoidPanel.class);
    private static final int SENTENCE_WIDTH = 300;
    private static final int NAME_WIDTH = 130;
    private static final int MOST_NAMED = 6;

    private final Composite panel;
    private final Label question;
    private final Text reason;
    private final Text operator;
    private final Button commit;
    private final OperatorMemory memory;
    private final Wish wish;
    private List<String> entryIds = List.of();

    /** What is done when the user has decided. */
    @FunctionalInterface
    interface Wish {
        void voidEntries(List<String> entryIds, String operator, String reason);
    }

    VoidPanel(Composite parent, OperatorMemory memory, Wish wish) {
        this.memory = memory;
        this.wish = wish;
        panel = Ids.name(new Composite(parent, SWT.NONE), "log.void.panel");
        Spacing.group(5).applyTo(panel);
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(panel);
        panel.setVisible(false);
        question = new Label(panel, SWT.WRAP);
        GridDataFactory.fillDefaults()
                .span(5, 1)
                .grab(true, false)
                .hint(SENTENCE_WIDTH, SWT.DEFAULT)
                .applyTo(question);
        reason = field(TEXTS.text("void.reason"), "log.void.reason", TEXTS.text("void.reason.empty"), true);
        operator = field(TEXTS.text("void.operator"), "log.void.operator", TEXTS.text("void.operator.empty"), false);
        Composite buttons = new Composite(panel, SWT.NONE);
        Spacing.tight(2).equalWidth(true).applyTo(buttons);
        commit = button(buttons, TEXTS.text("void.commit.one"), "log.void.commit");
        commit.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> decide()));
        Button cancel = button(buttons, TEXTS.text("void.cancel"), "log.void.cancel");
        cancel.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> close()));
        check();
    }

    Composite control() {
        return panel;
    }

    private Text field(String label, String id, String message, boolean wide) {
        Label name = new Label(panel, SWT.NONE);
        name.setText(label);
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(name);
        Text field = Ids.name(new Text(panel, SWT.BORDER | SWT.SINGLE), id);
        field.setMessage(message);
        GridDataFactory.fillDefaults()
                .grab(wide, false)
                .hint(NAME_WIDTH, SWT.DEFAULT)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(field);
        field.addModifyListener(event -> check());
        field.addKeyListener(KeyListener.keyPressedAdapter(event -> {
            if (event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR) {
                decide();
            } else if (event.keyCode == SWT.ESC) {
                close();
            }
        }));
        return field;
    }

    private static Button button(Composite parent, String words, String id) {
        Button button = Ids.name(new Button(parent, SWT.PUSH), id);
        button.setText(words);
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(button);
        return button;
    }

    /** Opens the panel for some entries. */
    void ask(List<String> wantedIds) {
        entryIds = List.copyOf(wantedIds);
        boolean one = entryIds.size() == 1;
        question.setText(
                one
                        ? TEXTS.text("void.ask.one", entryIds.get(0))
                        : TEXTS.text("void.ask.many", Integer.toString(entryIds.size()), named()));
        question.setForeground(Tones.of(panel).warning());
        commit.setText(TEXTS.text(one ? "void.commit.one" : "void.commit.many"));
        if (operator.getText().isBlank()) {
            operator.setText(memory.name());
        }
        show(true);
        reason.setFocus();
    }

    private String named() {
        return entryIds.stream().limit(MOST_NAMED).collect(Collectors.joining(", "))
                + (entryIds.size() > MOST_NAMED ? ", \u2026" : "");
    }

    boolean isOpen() {
        return panel.getVisible();
    }

    private void check() {
        boolean complete = !reason.getText().isBlank() && !operator.getText().isBlank();
        commit.setEnabled(complete);
        commit.setToolTipText(complete ? null : TEXTS.text("void.commit.incomplete"));
    }

    private void decide() {
        if (!commit.isEnabled()) {
            (reason.getText().isBlank() ? reason : operator).setFocus();
            return;
        }
        String who = operator.getText().strip();
        memory.keep(who);
        String why = reason.getText().strip();
        reason.setText("");
        close();
        wish.voidEntries(entryIds, who, why);
    }

    /** Closes the panel; what was typed stays until the next time. */
    void close() {
        show(false);
    }

    private void show(boolean visible) {
        panel.setVisible(visible);
        ((GridData) panel.getLayoutData()).exclude = !visible;
        panel.getParent().layout(true, true);
    }
}
