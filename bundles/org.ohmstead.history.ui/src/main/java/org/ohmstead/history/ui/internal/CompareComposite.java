// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.history.HistoryPlots;
import org.ohmstead.model.Project;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/** Amplifiers beside each other, or one in several periods: power, difference, price of a watt, and a figure over time. */
public final class CompareComposite extends Composite {
    private static final Messages TEXTS = Messages.of(CompareComposite.class);
    private static final String CHOICE = "compare.choice";
    private static final int[] ITEMS_AND_RESULTS = {29, 71};
    private static final int[] TABLE_AND_CHART = {42, 58};

    private final ProjectDesk desk;
    private final ViewMemory memory;
    private final Questions questions;
    private final CompareWork work = new CompareWork();
    private final Slices building;
    private final Slices showing;
    private ItemsPart items;
    private ConditionsBar conditions;
    private Label notes;
    private CTabFolder tabs;
    private PowersTable powers;
    private ChartCanvas chart;
    private TrendPart trend;
    private CompareChoice choice;
    private CompareAnswer answer = CompareAnswer.NOTHING;
    private long newest;
    private boolean complete;

    /**
     * What the user is asked in dialogs.
     *
     * @param folder asks for a project's folder, given where to begin
     * @param indexFile asks for the table of a price index, given where to begin
     */
    record Questions(UnaryOperator<Optional<Path>> folder, UnaryOperator<Optional<Path>> indexFile) {}

    /** Makes the view; its parts come one after the other in the next turns of the event loop. */
    CompareComposite(Composite parent, ProjectDesk desk, ViewMemory memory, Questions questions) {
        super(parent, SWT.NONE);
        this.desk = desk;
        this.memory = memory;
        this.questions = questions;
        choice = CompareChoice.parse(memory.get(CHOICE));
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(this);
        building = new Slices(this);
        showing = new Slices(this);
        SashForm halves = sash(this, SWT.HORIZONTAL);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(halves);
        Composite left = room(halves);
        Composite right = room(halves);
        halves.setWeights(ITEMS_AND_RESULTS);
        building.add(() -> makeItems(left));
        building.add(() -> makeConditions(right));
        building.add(() -> makeTabs(right));
        building.add(this::makePowers);
        building.add(this::makeTrend);
        building.add(this::start);
    }

    private static SashForm sash(Composite parent, int direction) {
        SashForm sash = new SashForm(parent, direction | SWT.SMOOTH);
        sash.setSashWidth(Spacing.GAP);
        return sash;
    }

    private static Composite room(Composite parent) {
        Composite room = new Composite(parent, SWT.NONE);
        Spacing.tight(1).applyTo(room);
        return room;
    }

    private void makeItems(Composite left) {
        items = new ItemsPart(
                left, () -> questions.folder().apply(beside()), chosen -> choose(choice.withItems(chosen)));
        GridDataFactory.fillDefaults().grab(true, true).applyTo(items.control());
        items.show(choice.items());
        left.requestLayout();
    }

    private void makeConditions(Composite right) {
        conditions = new ConditionsBar(
                right,
                () -> questions
                        .indexFile()
                        .apply(choice.indexFile().map(Path::getParent).or(this::beside)),
                this::choose,
                () -> powers.copy());
        GridDataFactory.fillDefaults().grab(true, false).applyTo(conditions.control());
        notes = Ids.name(new Label(right, SWT.WRAP), "compare.notes");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(200, SWT.DEFAULT)
                .exclude(true)
                .applyTo(notes);
        right.requestLayout();
    }

    private void makeTabs(Composite right) {
        tabs = Ids.name(new CTabFolder(right, SWT.TOP | SWT.FLAT), "compare.tabs");
        GridDataFactory.fillDefaults().grab(true, true).applyTo(tabs);
        right.requestLayout();
    }

    private void makePowers() {
        SashForm halves = sash(tabs, SWT.VERTICAL);
        powers = new PowersTable(halves);
        chart = Ids.name(new ChartCanvas(halves, SWT.BORDER), "compare.chart");
        halves.setWeights(TABLE_AND_CHART);
        tab(TEXTS.text("compare.power"), halves);
    }

    private void makeTrend() {
        trend = new TrendPart(tabs, figure -> choose(choice.withFigureId(figure)));
        tab(TEXTS.text("compare.trend"), trend.control());
    }

    private void tab(String title, Control control) {
        CTabItem item = new CTabItem(tabs, SWT.NONE);
        item.setText(title);
        item.setControl(control);
        if (tabs.getSelectionIndex() < 0) {
            tabs.setSelection(0);
        }
    }

    private void start() {
        complete = true;
        Registration listening = desk.listen(new Hears());
        addDisposeListener(event -> {
            newest++;
            listening.close();
        });
        styleReadOut();
        askAnew();
    }

    private final class Hears implements DeskListener {
        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            askAnew();
        }

        @Override
        public void projectChanged(Project before, Project after) {
            boolean matters = !before.amplifier().equals(after.amplifier())
                    || !before.setAside().equals(after.setAside())
                    || !before.bench().place().equals(after.bench().place());
            if (matters) {
                askAnew();
            }
        }

        @Override
        public void logChanged(LogSnapshot log) {
            askAnew();
        }

        @Override
        public void displayChanged(DisplaySettings settings) {
            styleReadOut();
            take(answer);
        }
    }

    private void styleReadOut() {
        // Bars and intervals of a comparison are of 95 %, whatever factor the user chose.
        chart.setReadOutStyle(new ReadOutStyle(desk.display().decimalComma(), ReadOutStyle.USUAL.coverage()));
        trend.chart().setReadOutStyle(new ReadOutStyle(desk.display().decimalComma(), ReadOutStyle.USUAL.coverage()));
    }

    private Optional<Path> beside() {
        return desk.session().map(ProjectSession::folder).map(Path::getParent);
    }

    private void choose(CompareChoice newChoice) {
        choice = newChoice;
        memory.put(CHOICE, newChoice.toText());
        askAnew();
    }

    /** Compares in the background; of several requests only the newest is answered. */
    private void askAnew() {
        newest++;
        Optional<ProjectSession> session = desk.session();
        if (session.isEmpty()) {
            take(CompareAnswer.NOTHING);
            return;
        }
        if (desk.log().state() == LogState.READING) {
            return; // it tells when it has been read
        }
        long mine = newest;
        CompareChoice asked = choice;
        CompareWork.Open open = new CompareWork.Open(
                session.get().folder(), session.get().project(), desk.log().state() == LogState.WHOLE);
        desk.work()
                .start(
                        TEXTS.text("compare.job"),
                        progress -> work.answer(asked, open, progress),
                        found -> ifNewest(mine, () -> take(found)),
                        failure -> ifNewest(mine, () -> fail(failure)));
    }

    private void ifNewest(long number, Runnable action) {
        if (number == newest && !isDisposed()) {
            action.run();
        }
    }

    private void fail(Exception failure) {
        take(new CompareAnswer(
                Optional.empty(),
                List.of(),
                List.of(TEXTS.text("compare.failed", Shown.reason(failure))),
                List.of(),
                List.of(),
                List.of(),
                List.of()));
    }

    private void take(CompareAnswer found) {
        answer = found;
        showing.clear();
        showing.add(() -> conditions.show(choice, found));
        showing.add(() -> say(found));
        showing.add(() -> powers.show(found, choice.basePeriod()));
        showing.add(() -> showChart(found));
        showing.add(() -> trend.show(found, choice.figureId()));
    }

    private void say(CompareAnswer found) {
        String words = Numbers.inSentence(String.join(" ", found.problems())).replace("&", "&&");
        if (!words.equals(notes.getText())) {
            notes.setText(words);
            notes.setToolTipText(words.isEmpty() ? null : words);
            notes.setForeground(Tones.of(this).warning());
            notes.setVisible(!words.isEmpty());
            ((GridData) notes.getLayoutData()).exclude = words.isEmpty();
            notes.requestLayout();
        }
    }

    private void showChart(CompareAnswer found) {
        Optional<Plot> plot = found.comparison().flatMap(HistoryPlots::powers);
        plot.ifPresentOrElse(
                each -> chart.show(PlotSource.of(ComparePlot.of(each, found))), () -> chart.showMessage(whyNothing()));
    }

    private String whyNothing() {
        if (desk.session().isEmpty()) {
            return TEXTS.text("compare.noProject");
        }
        return TEXTS.text("compare.nothing");
    }

    @Override
    public boolean setFocus() {
        if (isDisposed()) {
            return false;
        }
        return complete ? items.focus() : forceFocus();
    }
}
