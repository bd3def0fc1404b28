// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;

/** What can be done, each with its key; and beside it what was just said. */
final class ActionBar extends Composite {
    private static final Messages TEXTS = Messages.of(ActionBar.class);

    private final RunDesk runs;
    private final Button next;
    private final Button all;
    private final Button goOn;
    private final Button cancel;
    private final Button repeat;
    private final Button skip;
    private final Button takeBack;
    private final MessageLine message;

    /** What the bar asks to be done. */
    interface Deeds {
        void runNext();

        void runAll(boolean goOnAfterFailure);

        void cancel();

        void repeat();

        void skip();

        void takeBack();

        void note();
    }

    ActionBar(Composite parent, RunDesk runs, Deeds deeds) {
        super(parent, SWT.NONE);
        this.runs = runs;
        Spacing.group(1).spacing(0, Spacing.TIGHT).applyTo(this);
        message = new MessageLine(this, "console.message");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(message);
        Composite bar = new Composite(this, SWT.NONE);
        Spacing.group(9).applyTo(bar);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar);
        next = button(
                bar, TEXTS.text("actions.next"), "console.run.next", TEXTS.text("actions.nextHint"), deeds::runNext);
        next.setFont(JFaceResources.getFontRegistry().getBold(JFaceResources.DEFAULT_FONT));
        all = button(
                bar,
                TEXTS.text("actions.all"),
                "console.run.all",
                TEXTS.text("actions.allHint"),
                () -> deeds.runAll(goesOn()));
        goOn = Ids.name(new Button(bar, SWT.CHECK), "console.run.on");
        goOn.setText(TEXTS.text("actions.goOn"));
        goOn.setToolTipText(TEXTS.text("actions.goOnHint"));
        GridDataFactory.swtDefaults().applyTo(goOn);
        cancel = button(
                bar, TEXTS.text("actions.cancel"), "console.cancel", TEXTS.text("actions.cancelHint"), deeds::cancel);
        repeat = button(
                bar, TEXTS.text("actions.repeat"), "console.repeat", TEXTS.text("actions.repeatHint"), deeds::repeat);
        skip = button(bar, TEXTS.text("actions.skip"), "console.skip", TEXTS.text("actions.skipHint"), deeds::skip);
        takeBack = button(
                bar, TEXTS.text("actions.void"), "console.void", TEXTS.text("actions.voidHint"), deeds::takeBack);
        button(bar, TEXTS.text("actions.note"), "console.note", TEXTS.text("actions.noteHint"), deeds::note);
    }

    /** Returns whether the others are still tried when an item gives no result. */
    boolean goesOn() {
        return goOn.getSelection();
    }

    private static Button button(Composite parent, String words, String id, String hint, Runnable deed) {
        Button button = Ids.name(new Button(parent, SWT.PUSH), id);
        button.setText(words);
        button.setToolTipText(TEXTS.text("actions.hint", words.replace("&", "").replace("...", ""), hint));
        button.addListener(SWT.Selection, event -> deed.run());
        GridDataFactory.fillDefaults().applyTo(button);
        return button;
    }

    void refresh(Optional<ItemRow> chosen) {
        boolean idle = runs.whyNot().isEmpty();
        next.setEnabled(idle && runs.course().next().isPresent());
        all.setEnabled(idle && runs.course().next().isPresent());
        goOn.setEnabled(idle);
        cancel.setEnabled(runs.running());
        boolean mine = chosen.isPresent() && !runs.running();
        repeat.setEnabled(idle && mine);
        skip.setEnabled(mine && chosen.get().open() && runs.stage() == RunStage.READY);
        takeBack.setEnabled(mine && !chosen.get().entryIds().isEmpty() && runs.stage() == RunStage.READY);
        show();
    }

    private void show() {
        Optional<Message> words = runs.message().or(() -> runs.course().ended().map(RunWords::ended));
        if (words.isEmpty()) {
            Optional<String> why = runs.running() ? Optional.empty() : runs.whyNot();
            why.ifPresentOrElse(message::mention, message::clear);
        } else if (words.get().severity() == Severity.NOTE) {
            message.mention(words.get().sentence());
        } else {
            message.show(words.get().severity(), words.get().sentence());
        }
    }
}
