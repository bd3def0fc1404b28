// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import java.util.List;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;

/** A sentence with what can be done about it, in the view itself; takes no room while there is nothing to say. */
final class NoticeBar {
    /**
     * Something that can be done.
     *
     * @param words on the button
     * @param id of the button
     * @param action what it does; the notice is gone before
     */
    record Choice(String words, String id, Runnable action) {}

    private final Composite bar;
    private final MessageLine line;
    private final Composite buttons;

    NoticeBar(Composite parent) {
        bar = Ids.name(new Composite(parent, SWT.NONE), "sheet.notice");
        Spacing.group(2).applyTo(bar);
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(bar);
        line = new MessageLine(bar, "sheet.notice.text");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(line);
        buttons = new Composite(bar, SWT.NONE);
        bar.setVisible(false);
    }

    /** Returns the sentence that is shown; empty when there is none. */
    String text() {
        return bar.getVisible() ? line.text() : "";
    }

    /** Shows a sentence with choices; a further button takes it away. */
    void show(Severity severity, String sentence, List<Choice> choices) {
        // What was begun may end after the view was closed.
        if (bar.isDisposed()) {
            return;
        }
        for (Control old : buttons.getChildren()) {
            old.dispose();
        }
        for (Choice choice : choices) {
            button(choice.words(), choice.id(), () -> {
                clear();
                choice.action().run();
            });
        }
        button(
                severity == Severity.WARNING && !choices.isEmpty()
                        ? Texts.say("notice.later")
                        : Texts.say("notice.dismiss"),
                "sheet.notice.dismiss",
                this::clear);
        Spacing.tight(buttons.getChildren().length).applyTo(buttons);
        line.show(severity, sentence);
        setShown(true);
    }

    /** Shows a sentence that something was done, with what may follow. */
    void done(String sentence, List<Choice> choices) {
        show(Severity.NOTE, sentence, choices);
    }

    void clear() {
        line.clear();
        setShown(false);
    }

    private void button(String words, String id, Runnable action) {
        Button button = Ids.name(new Button(buttons, SWT.PUSH), id);
        button.setText(words);
        button.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> action.run()));
    }

    private void setShown(boolean shown) {
        ((GridData) bar.getLayoutData()).exclude = !shown;
        bar.setVisible(shown);
        bar.getParent().layout(true, true);
    }
}
