// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.ProgressBar;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.WorkProgress;

/** Looks for the shortest order, shows how far that is, cancels it, and offers what it found; its words stand in the summary. */
final class ForecastBar extends Composite {
    private static final Messages TEXTS = Messages.of(ForecastBar.class);
    private static final int STEPS = 1000;
    private static final int BAR_WIDTH = 110;

    private final BackgroundWork work;
    private final Button find;
    private final Button cancel;
    private final ProgressBar bar;
    private final Button use;
    private final Button back;
    private final ForecastSummary words;
    private AtomicBoolean cancelled = new AtomicBoolean();
    private boolean running;
    private boolean searchable;
    private long newest;

    /** What the buttons do. */
    interface Actions {
        /** Look for the shortest order. */
        void find();

        /** Take the order that was found. */
        void use();

        /** Forget the order that was found. */
        void back();
    }

    ForecastBar(Composite parent, BackgroundWork work, ForecastSummary words, Actions actions) {
        super(parent, SWT.NONE);
        this.work = work;
        this.words = words;
        Spacing.group(5).applyTo(this);
        find = button(TEXTS.text("bar.find"), "forecast.find", actions::find);
        find.setToolTipText(TEXTS.text("bar.find.hint"));
        cancel = button(TEXTS.text("bar.cancel"), "forecast.cancel", () -> cancelled.set(true));
        cancel.setToolTipText(TEXTS.text("bar.cancel.hint"));
        bar = Ids.name(new ProgressBar(this, SWT.HORIZONTAL), "forecast.progress");
        bar.setMaximum(STEPS);
        GridDataFactory.swtDefaults().hint(BAR_WIDTH, SWT.DEFAULT).applyTo(bar);
        use = button(TEXTS.text("bar.use"), "forecast.use", actions::use);
        use.setToolTipText(TEXTS.text("bar.use.hint"));
        back = button(TEXTS.text("bar.back"), "forecast.back", actions::back);
        addDisposeListener(event -> forget());
        offer(false);
        enable();
    }

    private Button button(String label, String id, Runnable action) {
        Button button = Ids.name(new Button(this, SWT.PUSH), id);
        button.setText(label);
        GridDataFactory.swtDefaults().applyTo(button);
        button.addListener(SWT.Selection, event -> action.run());
        return button;
    }

    /** Says whether there is anything to put in order. */
    void setSearchable(boolean newSearchable) {
        searchable = newSearchable;
        enable();
    }

    /** Offers to use the order in view, or to go back, or neither. */
    void offer(boolean offered) {
        show(use, offered);
        show(back, offered);
    }

    private void enable() {
        find.setEnabled(searchable && !running);
        show(cancel, running);
        show(bar, running);
    }

    private void show(Control control, boolean shown) {
        GridData data = (GridData) control.getLayoutData();
        if (data.exclude == shown || control.getVisible() != shown) {
            data.exclude = !shown;
            control.setVisible(shown);
            control.requestLayout();
        }
    }

    /** Gives up a search that runs; nobody is told of what it found. */
    void forget() {
        newest++;
        cancelled.set(true);
        running = false;
        if (!isDisposed() && !find.isDisposed()) {
            enable();
            words.mention("");
        }
    }

    /** What runs for long: it asks whether to end, tells how much is done, and then gives the best so far. */
    interface Search<T> {
        T run(BooleanSupplier ended, DoubleConsumer progress);
    }

    /** Searches in the background; {@code found} is told the result, also of a search that was cancelled. */
    <T> void run(Search<T> search, Consumer<T> found) {
        forget();
        AtomicBoolean mine = new AtomicBoolean();
        cancelled = mine;
        long number = newest;
        running = true;
        bar.setSelection(0);
        enable();
        words.mention(TEXTS.text("bar.searching"));
        // The result is handed over from within, since work that is cancelled in the Progress view gives none.
        work.start(
                TEXTS.text("bar.job"),
                progress -> {
                    T result =
                            search.run(() -> mine.get() || progress.cancelled(), done -> step(progress, done, number));
                    work.later(() -> end(number, () -> found.accept(result)));
                    return result;
                },
                result -> {},
                failure ->
                        end(number, () -> words.say(Severity.ERROR, TEXTS.text("bar.stopped", failure.getMessage()))));
    }

    private void step(WorkProgress progress, double done, long number) {
        int steps = (int) Math.round(Math.max(0, Math.min(1, done)) * STEPS);
        progress.step(steps, STEPS, TEXTS.text("bar.looking"));
        work.later(() -> {
            if (number == newest && !isDisposed()) {
                bar.setSelection(steps);
            }
        });
    }

    private void end(long number, Runnable then) {
        if (number == newest && !isDisposed()) {
            running = false;
            words.mention("");
            enable();
            then.run();
        }
    }
}
