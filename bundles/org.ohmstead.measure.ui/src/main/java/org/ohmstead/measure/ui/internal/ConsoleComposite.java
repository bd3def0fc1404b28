// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.model.Problem;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.Registration;

/** The console at which the plan is carried out: the plan, the step at hand in large type, live figures, and what is in the way. */
public final class ConsoleComposite extends Composite {
    private static final Messages TEXTS = Messages.of(ConsoleComposite.class);

    private static final int[] WEIGHTS = {38, 62};
    private static final int TICK_MILLIS = 500;

    private final RunDesk runs;
    private final ConsoleHost host;
    private final StackLayout stack = new StackLayout();
    private final EmptyPane empty;
    private final Composite page;
    private final TopBar top;
    private final AskPanel ask;
    private final StoppedPanel stopped;
    private final FigureStrip figures;
    private final PlanTable plan;
    private final CTabFolder tabs;
    private final BeforePane before;
    private final RunPane live;
    private final DryRunPane dry;
    private final BenchPane bench;
    private final ReasonPanel reason;
    private final ActionBar actions;
    private final Slices slices;
    private boolean ran;
    private boolean refreshing;

    /** Makes the console. */
    ConsoleComposite(Composite parent, RunDesk runs, ConsoleHost host) {
        super(parent, SWT.NONE);
        this.runs = runs;
        this.host = host;
        slices = new Slices(this);
        setLayout(stack);
        empty = new EmptyPane(this, host);
        page = new Composite(this, SWT.NONE);
        Spacing.page(1)
                .margins(Spacing.GAP, Spacing.GAP)
                .spacing(0, Spacing.TIGHT)
                .applyTo(page);
        top = wide(new TopBar(page, runs::emergencyStop));
        ask = new AskPanel(page, runs.questions());
        stopped = new StoppedPanel(page, this::askToRelease);
        figures = wide(new FigureStrip(page));
        SashForm sash = new SashForm(page, SWT.HORIZONTAL | SWT.SMOOTH);
        sash.setSashWidth(Spacing.GAP);
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(sash);
        plan = new PlanTable(sash, row -> chosen());
        tabs = Ids.name(new CTabFolder(sash, SWT.FLAT | SWT.TOP), "console.tabs");
        before = tab(TEXTS.text("console.before"), new BeforePane(tabs, this::askYes));
        live = tab(TEXTS.text("console.live"), new RunPane(tabs, runs.deeds()::goOnNow));
        dry = tab(TEXTS.text("console.plan"), new DryRunPane(tabs));
        bench = tab(TEXTS.text("console.bench"), new BenchPane(tabs, runs));
        tabs.setSelection(0);
        sash.setWeights(WEIGHTS);
        reason = new ReasonPanel(page);
        actions = wide(new ActionBar(page, runs, new Done()));
        new ConsoleKeys(this, new Pressed());
        Registration listening = runs.listen(this::refreshSoon);
        addDisposeListener(event -> listening.close());
        stack.topControl = empty;
        refreshSoon();
        tick();
    }

    private static <C extends Control> C wide(C control) {
        GridDataFactory.fillDefaults().grab(true, false).applyTo(control);
        return control;
    }

    private <C extends Control> C tab(String words, C control) {
        CTabItem item = new CTabItem(tabs, SWT.NONE);
        item.setText(words);
        item.setControl(control);
        return control;
    }

    private void tick() {
        getDisplay().timerExec(TICK_MILLIS, () -> {
            if (!isDisposed()) {
                if (runs.running()) {
                    top.refresh(runs);
                    live.refresh(runs);
                }
                tick();
            }
        });
    }

    private void refreshSoon() {
        if (!refreshing) {
            refreshing = true;
            slices.add(this::refreshHead);
            slices.add(this::refreshPlan);
            slices.add(this::refreshTabs);
        }
    }

    private void refreshHead() {
        refreshing = false;
        Control wanted = empty.show(runs.stage()) ? empty : page;
        if (stack.topControl != wanted) {
            stack.topControl = wanted;
            layout();
        }
        top.refresh(runs);
        offer();
        if (ask.refresh()) {
            host.show();
        }
        stopped.refresh(runs);
        figures.refresh(runs);
    }

    private void offer() {
        switch (runs.stage()) {
            case UNSAVED ->
                top.offer(Optional.of(TEXTS.text("console.save")), () -> host.command("org.eclipse.ui.file.save"));
            case NOT_BEGUN -> top.offer(Optional.of(TEXTS.text("console.goThrough")), this::begin);
            default -> {
                boolean noBench = runs.stage() == RunStage.READY && RunWords.needsBench(runs);
                top.offer(
                        noBench ? Optional.of(TEXTS.text("console.chooseBench")) : Optional.empty(), () -> open(bench));
            }
        }
    }

    private void begin() {
        runs.begin();
        open(RunWords.needsBench(runs) ? bench : dry);
    }

    private void open(Control pane) {
        for (CTabItem item : tabs.getItems()) {
            if (item.getControl() == pane) {
                tabs.setSelection(item);
                pane.setFocus();
            }
        }
    }

    private void refreshPlan() {
        plan.show(runs.course().rows(), runs.course().atHand());
        if (runs.running() != ran) {
            ran = runs.running();
            if (ran) {
                reason.close();
                tabs.setSelection(1);
            }
        }
    }

    private void refreshTabs() {
        chosen();
        live.refresh(runs);
        dry.refresh(runs);
    }

    private void chosen() {
        Optional<ItemRow> row = plan.selection();
        before.refresh(runs, row);
        bench.refresh(row);
        actions.refresh(row);
    }

    // ---- what is asked inline

    // The question takes the place of the buttons, so that the rest keeps its room.
    private void ask(ReasonPanel.Wish wish) {
        place(actions, false);
        reason.ask(wish, runs.choices().operator(), () -> {
            place(actions, true);
            plan.setFocus();
        });
    }

    private void place(Control control, boolean there) {
        control.setVisible(there);
        ((GridData) control.getLayoutData()).exclude = !there;
        page.layout(true, true);
    }

    private void askToRelease() {
        ask(new ReasonPanel.Wish(
                TEXTS.text("release.question"), "", TEXTS.text("release.commit"), "", true, (why, who) -> runs.deeds()
                        .release(who)));
    }

    private void askYes(String stepId, Problem problem) {
        List<LogDeeds.Warned> alike = runs.dryRuns().alike(problem);
        boolean alone = alike.size() < 2;
        ask(new ReasonPanel.Wish(
                TEXTS.text("confirm.question", stepId, problem.what()),
                TEXTS.text("confirm.why"),
                TEXTS.text("confirm.commit"),
                alone ? "" : TEXTS.text("confirm.more", Integer.toString(alike.size() - 1)),
                true,
                (why, who) -> runs.deeds()
                        .confirm(reason.more() ? alike : List.of(new LogDeeds.Warned(stepId, problem)), why, who)));
    }

    private void askToSkip(ItemRow row) {
        ask(new ReasonPanel.Wish(
                TEXTS.text("skip.question", row.item().stepId(), row.measurement()),
                TEXTS.text("skip.why"),
                TEXTS.text("skip.commit"),
                "",
                true,
                (why, who) -> runs.deeds().skip(row.item(), why, who)));
    }

    private void askToVoid(ItemRow row) {
        String entry = row.entryIds().get(0);
        ask(new ReasonPanel.Wish(
                TEXTS.text("void.question", entry),
                TEXTS.text("skip.why"),
                TEXTS.text("void.commit"),
                "",
                true,
                (why, who) -> runs.deeds().voidEntry(entry, why, who)));
    }

    private void askForNote() {
        ask(new ReasonPanel.Wish(
                TEXTS.text("note.question"),
                TEXTS.text("note.label"),
                TEXTS.text("note.commit"),
                "",
                false,
                (text, who) -> runs.deeds().note(text, who)));
    }

    private final class Done implements ActionBar.Deeds {
        @Override
        public void runNext() {
            runs.runNext();
        }

        @Override
        public void runAll(boolean goOnAfterFailure) {
            runs.runAll(goOnAfterFailure);
        }

        @Override
        public void cancel() {
            runs.deeds().cancel(runs.choices().operator());
        }

        @Override
        public void repeat() {
            plan.selection().ifPresent(row -> runs.run(row.item()));
        }

        @Override
        public void skip() {
            plan.selection().ifPresent(ConsoleComposite.this::askToSkip);
        }

        @Override
        public void takeBack() {
            plan.selection().filter(row -> !row.entryIds().isEmpty()).ifPresent(ConsoleComposite.this::askToVoid);
        }

        @Override
        public void note() {
            askForNote();
        }
    }

    private final class Pressed implements ConsoleKeys.Keys {
        @Override
        public void runNext() {
            runs.runNext();
        }

        @Override
        public void runAll() {
            runs.runAll(actions.goesOn());
        }

        @Override
        public void emergencyStop() {
            runs.emergencyStop();
        }

        @Override
        public boolean running() {
            return runs.running();
        }
    }

    /** Returns whether all that is known is shown. */
    boolean upToDate() {
        return slices.done();
    }

    @Override
    public boolean setFocus() {
        Control target = stack.topControl == page ? plan : empty;
        return !isDisposed() && !target.isDisposed() && target.setFocus();
    }
}
