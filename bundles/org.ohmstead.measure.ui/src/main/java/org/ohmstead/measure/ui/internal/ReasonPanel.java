// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.function.BiConsumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** Asks, in its place and without a dialog, why something is done and by whom. */
final class ReasonPanel extends Composite {
    private static final Messages TEXTS = Messages.of(ReasonPanel.class);

    private static final int SENTENCE_WIDTH = 300;
    private static final int NAME_WIDTH = 150;

    private final Label question;
    private final Button box;
    private final Label reasonLabel;
    private final Text reason;
    private final Text who;
    private final Button commit;
    private Wish wish = new Wish("", "", "", "", true, (why, name) -> {});
    private Runnable closed = () -> {};

    /**
     * What is asked.
     *
     * @param question whole sentences
     * @param reasonLabel the label of the reason; empty when none is wanted
     * @param button what the button says, with its mnemonic
     * @param more what a box offers to do besides; empty for no box
     * @param nameNeeded whether the name must be given
     * @param done hears reason and name
     */
    record Wish(
            String question,
            String reasonLabel,
            String button,
            String more,
            boolean nameNeeded,
            BiConsumer<String, String> done) {}

    ReasonPanel(Composite parent) {
        super(parent, SWT.NONE);
        Ids.name(this, "console.reason.panel");
        Spacing.group(6).applyTo(this);
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(this);
        setVisible(false);
        question = Ids.name(new Label(this, SWT.WRAP), "console.reason.question");
        GridDataFactory.fillDefaults()
                .span(6, 1)
                .grab(true, false)
                .hint(SENTENCE_WIDTH, SWT.DEFAULT)
                .applyTo(question);
        box = Ids.name(new Button(this, SWT.CHECK), "console.reason.more");
        GridDataFactory.fillDefaults().span(6, 1).applyTo(box);
        reasonLabel = new Label(this, SWT.NONE);
        reason = text("console.reason.why", true);
        Label name = new Label(this, SWT.NONE);
        name.setText(TEXTS.text("reason.name"));
        who = text("console.reason.who", false);
        commit = button("console.reason.commit");
        commit.addListener(SWT.Selection, event -> decide());
        Button cancel = button("console.reason.cancel");
        cancel.setText(TEXTS.text("reason.leave"));
        cancel.addListener(SWT.Selection, event -> close());
    }

    private Text text(String id, boolean wide) {
        Text text = Ids.name(new Text(this, SWT.BORDER | SWT.SINGLE), id);
        GridDataFactory.fillDefaults()
                .grab(wide, false)
                .hint(NAME_WIDTH, SWT.DEFAULT)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(text);
        text.addListener(SWT.Modify, event -> check());
        text.addListener(SWT.DefaultSelection, event -> decide());
        text.addListener(SWT.KeyDown, this::key);
        return text;
    }

    private Button button(String id) {
        Button button = Ids.name(new Button(this, SWT.PUSH), id);
        GridDataFactory.fillDefaults().applyTo(button);
        return button;
    }

    private void key(Event event) {
        if (event.keyCode == SWT.ESC) {
            event.doit = false;
            close();
        }
    }

    /**
     * Opens the panel.
     *
     * @param operator the name that stands there at first
     * @param whenClosed runs when it is closed, however it is
     */
    void ask(Wish newWish, String operator, Runnable whenClosed) {
        wish = newWish;
        closed = whenClosed;
        question.setText(wish.question());
        question.setForeground(Tones.of(this).text());
        reasonLabel.setText(wish.reasonLabel());
        reason.setText("");
        boolean reasoned = !wish.reasonLabel().isEmpty();
        show(reasonLabel, reasoned);
        show(reason, reasoned);
        if (who.getText().isBlank()) {
            who.setText(operator);
        }
        box.setText(wish.more());
        box.setSelection(false);
        show(box, !wish.more().isEmpty());
        commit.setText(wish.button());
        check();
        setOpen(true);
        (reasoned ? reason : who).setFocus();
    }

    private static void show(Control control, boolean visible) {
        if (!(control.getLayoutData() instanceof GridData)) {
            GridDataFactory.swtDefaults().applyTo(control);
        }
        ((GridData) control.getLayoutData()).exclude = !visible;
        control.setVisible(visible);
    }

    /** Returns whether the box is ticked that offers to do more. */
    boolean more() {
        return box.getSelection();
    }

    boolean isOpen() {
        return getVisible();
    }

    private boolean complete() {
        boolean reasoned = wish.reasonLabel().isEmpty() || !reason.getText().isBlank();
        return reasoned && (!wish.nameNeeded() || !who.getText().isBlank());
    }

    private void check() {
        commit.setEnabled(complete());
        commit.setToolTipText(complete() ? null : TEXTS.text("reason.incomplete"));
    }

    private void decide() {
        if (!complete()) {
            (who.getText().isBlank() && !reason.getText().isBlank() ? who : reason).setFocus();
            return;
        }
        Wish now = wish;
        String why = reason.getText().strip();
        String name = who.getText().strip();
        close();
        now.done().accept(why, name);
    }

    /** Closes the panel without doing anything. */
    void close() {
        if (isOpen()) {
            setOpen(false);
            closed.run();
        }
    }

    private void setOpen(boolean open) {
        setVisible(open);
        ((GridData) getLayoutData()).exclude = !open;
        getParent().layout(true, true);
    }
}
