// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.ProgressBar;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.WorkProgress;

/** Starts the search, shows how far it is, cancels it, and says what it has proven. */
final class WorkBar extends Composite {
    private static final Messages TEXTS = Messages.of(WorkBar.class);

    private static final int STEPS = 1000;
    private static final int BAR_WIDTH = 110;

    private final BackgroundWork work;
    private final Button find;
    private final Button cancel;
    private final ProgressBar bar;
    private final MessageLine message;
    private AtomicBoolean cancelled = new AtomicBoolean();
    private long newest;

    /** Makes it; {@code startText} stands on the button that starts the work. */
    WorkBar(Composite parent, BackgroundWork work, String id, String startText, Runnable start) {
        super(parent, SWT.NONE);
        this.work = work;
        Spacing.group(4).applyTo(this);
        find = button(startText, id + ".find", start);
        cancel = button(TEXTS.text("work.cancel"), id + ".cancel", () -> cancelled.set(true));
        cancel.setToolTipText(TEXTS.text("work.cancelHint"));
        bar = Ids.name(new ProgressBar(this, SWT.HORIZONTAL), id + ".progress");
        bar.setMaximum(STEPS);
        GridDataFactory.swtDefaults().hint(BAR_WIDTH, SWT.DEFAULT).applyTo(bar);
        message = new MessageLine(this, id + ".message");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(message);
        addDisposeListener(event -> forget());
        running(false);
    }

    private Button button(String label, String id, Runnable action) {
        Button button = Ids.name(new Button(this, SWT.PUSH), id);
        button.setText(label);
        button.addListener(SWT.Selection, event -> action.run());
        return button;
    }

    private void running(boolean running) {
        find.setEnabled(!running);
        cancel.setEnabled(running);
        bar.setVisible(running);
        ((GridData) bar.getLayoutData()).exclude = !running;
        bar.setSelection(0);
        bar.requestLayout();
    }

    /** Gives up a search that runs; nobody is told of what it found. */
    void forget() {
        newest++;
        cancelled.set(true);
        if (!isDisposed()) {
            running(false);
            message.clear();
        }
    }

    void say(Severity severity, String sentence) {
        message.show(severity, sentence);
    }

    void mention(String sentence) {
        message.mention(sentence);
    }

    /** What runs for long: it asks whether to end, tells how much is done, and then gives the best so far. */
    interface Search<T> {
        T run(BooleanSupplier ended, DoubleConsumer progress);
    }

    /**
     * Searches in the background.
     *
     * @param title what the Progress view calls it
     * @param search what to do
     * @param found told the result, also of a search that was cancelled, with this bar waiting for the last word
     */
    <T> void run(String title, Search<T> search, Consumer<T> found) {
        newest++;
        cancelled.set(true);
        AtomicBoolean mine = new AtomicBoolean();
        cancelled = mine;
        long number = newest;
        running(true);
        message.mention(TEXTS.text("work.searching"));
        // The result is handed over from within, since work that is cancelled in the Progress view gives none.
        work.start(
                title,
                progress -> {
                    T result =
                            search.run(() -> mine.get() || progress.cancelled(), done -> step(progress, done, number));
                    work.later(() -> take(result, number, found));
                    return result;
                },
                result -> {},
                failure -> fail(failure, number));
    }

    private void step(WorkProgress progress, double done, long number) {
        int steps = (int) Math.round(Math.max(0, Math.min(1, done)) * STEPS);
        progress.step(steps, STEPS, TEXTS.text("work.looking"));
        work.later(() -> {
            if (number == newest && !isDisposed()) {
                bar.setSelection(steps);
            }
        });
    }

    private <T> void take(T result, long number, Consumer<T> found) {
        if (number == newest && !isDisposed()) {
            running(false);
            found.accept(result);
        }
    }

    private void fail(Exception failure, long number) {
        if (number == newest && !isDisposed()) {
            running(false);
            message.show(Severity.ERROR, TEXTS.text("work.failed", failure.getMessage()));
        }
    }
}
