// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Table;
import org.ohmstead.curves.CurveGroup;
import org.ohmstead.curves.LoadCurve;
import org.ohmstead.curves.RatingResult;
import org.ohmstead.curves.study.PowerStudy;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.Project;
import org.ohmstead.model.SetAside;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.ChosenPoint;
import org.ohmstead.plot.ui.PlotReadOut;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
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

/** Power against supply volts: readings, fitted curves, ratings and their verdicts, and what the curves say at any voltage. */
public final class PowerComposite extends Composite {
    private static final Messages TEXTS = Messages.of(PowerComposite.class);

    private final ProjectDesk desk;
    private final ChoiceBar choices;
    private final Slices building;
    private final Slices showing;
    private final LineVolts line = new LineVolts();
    private CompareBar compare;
    private ChartCanvas chart;
    private LineReadOut readOut;
    private StudyTabs tabs;
    private SheetTable ratings;
    private SheetTable powers;
    private VerdictIcons icons;
    private Optional<ReadingsPart> readings = Optional.empty();
    private PowerCurves study = PowerCurves.NOTHING;
    private Optional<PowerPlot> shown = Optional.empty();
    private Optional<CurveGroup> shownGroup = Optional.empty();
    private OptionalDouble cursorVolts = OptionalDouble.empty();
    private long newest;
    private boolean complete;
    private boolean focusedLater;

    /** Makes the view; most of its parts come one after the other in the next turns of the event loop. */
    public PowerComposite(Composite parent, ProjectDesk desk) {
        this(parent, desk, start -> CompareBar.ask(parent.getShell(), start));
    }

    /**
     * Makes the view.
     *
     * @param folders asks for the folder of a project to compare with, given where to begin
     */
    PowerComposite(Composite parent, ProjectDesk desk, UnaryOperator<Optional<Path>> folders) {
        super(parent, SWT.NONE);
        this.desk = desk;
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(this);
        building = new Slices(this);
        showing = new Slices(this);
        choices = new ChoiceBar(this, this::showCurves, this::copyPowers);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(choices.control());
        // The bar below is made of the same, so that it will be as high.
        PowerRooms rooms = new PowerRooms(this, choices.control().computeSize(SWT.DEFAULT, SWT.DEFAULT).y);
        building.add(() -> {
            compare = new CompareBar(rooms.compare(), desk, folders, this::showCompared);
            rooms.fitBar();
        });
        building.add(() -> makeChart(rooms.chart()));
        building.add(() -> makeReadOut(rooms.readOut()));
        building.add(() -> makeRatings(rooms.tabs()));
        building.add(this::makePowers);
        building.add(this::start);
    }

    private void makeChart(Composite parent) {
        chart = Ids.name(new ChartCanvas(parent, SWT.BORDER), "power.chart");
        chart.requestLayout();
    }

    private void makeReadOut(Composite parent) {
        readOut = new LineReadOut(parent, line);
        readOut.control().requestLayout();
    }

    private void makeRatings(Composite parent) {
        tabs = new StudyTabs(parent);
        ratings = new SheetTable(tabs.control(), "power.ratings");
        ratings.reserveIcon(VerdictIcons.SIZE + Spacing.GAP);
        icons = new VerdictIcons(ratings.control());
        ratings.control()
                .addSelectionListener(
                        SelectionListener.widgetSelectedAdapter(event -> turnToRating(ratings.control())));
        tabs.tab(TEXTS.text("tabs.ratings"), ratings.control());
        tabs.control().requestLayout();
    }

    private void makePowers() {
        powers = new SheetTable(tabs.control(), "power.powers");
        tabs.tab(TEXTS.text("tabs.curves"), powers.control());
        makeParts();
    }

    /** Fits, and listens, when all parts are there that show what was fitted. */
    private void start() {
        complete = true;
        line.listen(volts -> chart.setLine(OptionalDouble.of(volts)));
        Runnable noLine = chart.addLineListener(line::set);
        Runnable noCursor = chart.addCursorListener(this::cursorMoved);
        Runnable noPoints = chart.addPointListener(this::pointChosen);
        Registration listening = desk.listen(new Hears());
        styleReadOut();
        addDisposeListener(event -> {
            newest++;
            listening.close();
            noLine.run();
            noCursor.run();
            noPoints.run();
        });
        fitAnew();
        // The user may have gone elsewhere meanwhile.
        if (focusedLater && (isFocusControl() || getDisplay().getFocusControl() == null)) {
            setFocus();
        }
    }

    private void makeParts() {
        tabs.add(FindingsPart::new, part -> {});
        tabs.add(NormalisedPart::new, part -> {});
        tabs.add(parent -> new WhatIfPart(parent, line), part -> {});
        tabs.add(TablePart::parameters, part -> {});
        tabs.add(parent -> TablePart.differences(parent, line), part -> {});
        tabs.add(parent -> new ResidualPart(parent, desk), part -> {});
        tabs.add(parent -> new ReadingsPart(parent, desk), part -> readings = Optional.of(part));
    }

    private final class Hears implements DeskListener {
        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            compare.forgetKinds();
            take(PowerCurves.NOTHING);
            fitAnew();
        }

        @Override
        public void projectChanged(Project before, Project after) {
            boolean matters =
                    !before.amplifier().ratings().equals(after.amplifier().ratings())
                            || !before.sheet().equals(after.sheet())
                            || !before.setAside().equals(after.setAside());
            if (matters) {
                fitAnew();
            }
        }

        @Override
        public void logChanged(LogSnapshot log) {
            fitAnew();
        }

        @Override
        public void stateChanged() {
            readings.ifPresent(ReadingsPart::check);
        }

        @Override
        public void displayChanged(DisplaySettings settings) {
            // The texts of the choices change, and with them what they are known by.
            Optional<CurveGroup> before = choices.group();
            choices.offer(study);
            before.ifPresent(choices::choose);
            compare.offer(study);
            styleReadOut();
            showRatings();
            showCurves();
        }

        @Override
        public void chosenEntryChanged(Optional<LogEntry> entry) {
            showChosen(entry);
            readings.ifPresent(part -> part.choose(entry));
        }
    }

    private void styleReadOut() {
        chart.setReadOutStyle(
                new ReadOutStyle(desk.display().decimalComma(), desk.display().coverageWords()));
    }

    /** Fits in the background; of several requests only the newest is answered. */
    private void fitAnew() {
        newest++;
        LogSnapshot log = desk.log();
        Optional<Project> project = desk.session().map(ProjectSession::project);
        if (project.isEmpty() || log.entries().isEmpty()) {
            take(PowerCurves.NOTHING);
            return;
        }
        long mine = newest;
        Amplifier amplifier = project.get().amplifier();
        SheetSettings settings = project.get().sheet();
        List<SetAside> setAside = project.get().setAside();
        choices.say(TEXTS.text("view.fitting"), Tones.of(this).mutedText());
        desk.work()
                .start(
                        TEXTS.text("view.fittingJob"),
                        progress -> PowerCurves.of(log.entries(), amplifier, settings, setAside, progress),
                        fitted -> {
                            if (mine == newest) {
                                take(fitted);
                            }
                        },
                        failure -> {
                            if (mine == newest) {
                                fail(failure);
                            }
                        });
    }

    private void take(PowerCurves fitted) {
        study = fitted;
        Tones tones = Tones.of(this);
        boolean broken = desk.log().state() == LogState.BROKEN;
        choices.say(broken ? desk.log().sentence() : "", broken ? tones.error() : tones.mutedText());
        choices.offer(study);
        compare.offer(study);
        showing.clear();
        showing.add(this::showRatings);
        showing.add(this::showChart);
        showing.add(this::showPowers);
        showing.add(this::showStudy);
    }

    private void fail(Exception failure) {
        take(PowerCurves.NOTHING);
        String sentence = failure.getMessage() == null ? failure.toString() : failure.getMessage();
        choices.say(TEXTS.text("view.notFitted", sentence), Tones.of(this).error());
    }

    private void showRatings() {
        List<RatingResult> results = study.ratings();
        PowerCurves now = study;
        ratings.show(() -> RatingSheet.of(now));
        for (int row = 0; row < results.size(); row++) {
            ratings.control()
                    .getItem(row)
                    .setImage(RatingSheet.VERDICT, icons.of(results.get(row).outcome()));
            ratings.control()
                    .getItem(row)
                    .setForeground(
                            RatingSheet.VERDICT, icons.tone(results.get(row).outcome()));
        }
    }

    private void showCurves() {
        if (!complete) {
            return; // what was chosen so far is shown when there is something
        }
        showChart();
        showPowers();
        showStudy();
    }

    /** Shows what is laid over now; chart and tabs each in a turn of their own. */
    private void showCompared() {
        showing.add(this::showChart);
        showing.add(this::showStudy);
    }

    /** Shows what the joint study of the chosen curves says; its line goes to where amplifiers are rated as a rule. */
    private void showStudy() {
        Optional<CurveGroup> group = choices.group();
        Optional<JointStudy> joint = group.flatMap(study::studyOf);
        Optional<PowerStudy> found = joint.flatMap(JointStudy::study);
        if (found.isPresent() && line.value().isEmpty()) {
            line.set(Difference.supplyVolts(found.get()));
        }
        chart.setLine(found.isPresent() ? line.value() : OptionalDouble.empty());
        readOut.show(joint);
        Comparison comparison = compare.comparison(study, group);
        String why = group.isEmpty() ? Words.whyNothing(desk) : "";
        tabs.show(new StudyPart.InView(study, group, joint, why, comparison));
    }

    private void showChart() {
        Optional<CurveGroup> group = choices.group();
        Comparison comparison = compare.comparison(study, group);
        if (group.isEmpty()) {
            shown = Optional.empty();
            shownGroup = Optional.empty();
            chart.showMessage(Words.whyNothing(desk));
            return;
        }
        PowerPlot plot = PowerPlot.of(study, group.get(), choices.channels(), desk.chosenEntry(), choices.jointly())
                .over(comparison, study, group.get(), choices.channels());
        boolean sameChart =
                shownGroup.map(before -> sameAxes(before, group.get())).orElse(false);
        shown = Optional.of(plot);
        shownGroup = group;
        chart.show(PlotSource.of(plot.plot()), sameChart);
    }

    private static boolean sameAxes(CurveGroup one, CurveGroup other) {
        return one.kind() == other.kind()
                && one.mode() == other.mode()
                && one.endPoint().equals(other.endPoint())
                && one.frequencyHz() == other.frequencyHz();
    }

    private List<LoadCurve> curves() {
        return choices.group().map(group -> choices.channels().of(group)).orElse(List.of());
    }

    private void showPowers() {
        List<LoadCurve> curves = curves();
        OptionalDouble cursor = cursorVolts;
        powers.show(() -> CurveSheet.of(curves, cursor));
    }

    private void cursorMoved(Optional<PlotReadOut> readOut) {
        cursorVolts = readOut.map(each -> OptionalDouble.of(each.x())).orElse(OptionalDouble.empty());
        if (!isDisposed()) {
            showPowers();
        }
    }

    private void pointChosen(ChosenPoint point) {
        shown.flatMap(plot -> plot.entryOf(point.series(), point.index()))
                .ifPresent(entry -> desk.choose(Optional.of(entry)));
    }

    /** Rings the point of an entry that was chosen, here or elsewhere; turns to the chart that has it. */
    private void showChosen(Optional<LogEntry> entry) {
        Optional<CurveGroup> wanted = entry.flatMap(study::groupWith);
        if (wanted.isPresent() && !wanted.equals(choices.group())) {
            choices.choose(wanted.get());
        } else {
            showCurves();
        }
    }

    private void turnToRating(Table table) {
        int row = table.getSelectionIndex();
        if (row >= 0 && row < study.ratings().size()) {
            study.groupOf(study.ratings().get(row).rating()).ifPresent(choices::choose);
        }
    }

    private void copyPowers() {
        if (!complete) {
            return; // there is nothing to copy yet
        }
        powers.control().deselectAll();
        powers.copy();
    }

    @Override
    public boolean setFocus() {
        if (!isDisposed() && !complete) {
            focusedLater = true;
            return forceFocus();
        }
        // A composite that is being disposed is asked to give the focus to one of its own.
        return !isDisposed() && !chart.isDisposed() && chart.setFocus();
    }
}
