// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sound.ui.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Severity;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.sound.ExposureCaution;
import org.ohmstead.signal.sound.SeriesComparison;
import org.ohmstead.signal.sound.SoundPoint;
import org.ohmstead.signal.sound.SoundSeries;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;
import org.ohmstead.workbench.table.EditTable;

/**
 * Levels in the vehicle, typed in or from recordings: a table, charts of level and of change against another series, what a change of
 * power should do, sums, and the caution about exposure, which is always in sight.
 */
public final class SoundComposite extends Composite {
    private static final int[] TABLE_AND_CHARTS = {45, 55};
    private static final List<String> TABS =
            List.of("tab.charts", "tab.change", "tab.recording", "tab.sum", "tab.exposure");
    private static final int[] LEVEL_AND_CHANGE = {62, 38};

    private final ProjectDesk desk;
    private final SeriesShelf shelf;
    private final MessageLine caution;
    private final MessageLine message;
    private final Slices building;
    private SeriesBar bar;
    private EditTable<SoundPoint> table;
    private SashForm charts;
    private ChartCanvas levels;
    private ChartCanvas changes;
    private Label facts;
    private RecordingPane recording;
    private ExposurePane exposure;

    /**
     * Makes the view.
     *
     * @param parent where it stands
     * @param desk the open project
     * @param questions asks for a file, given a title
     */
    public SoundComposite(Composite parent, ProjectDesk desk, Function<String, Optional<Path>> questions) {
        super(parent, SWT.NONE);
        this.desk = desk;
        shelf = new SeriesShelf(desk.work(), this::show, this::fail);
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(this);
        caution = new MessageLine(this, "sound.caution");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(caution);
        SashForm halves = sash(this, SWT.HORIZONTAL);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(halves);
        Composite left = new Composite(halves, SWT.NONE);
        Spacing.tight(1).applyTo(left);
        CTabFolder tabs = Ids.name(new CTabFolder(halves, SWT.TOP | SWT.FLAT), "sound.tabs");
        halves.setWeights(TABLE_AND_CHARTS);
        message = new MessageLine(this, "sound.message");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(message);
        for (String key : TABS) {
            new CTabItem(tabs, SWT.NONE).setText(Texts.say(key));
        }
        tabs.setSelection(0);
        // All at once would keep the keys waiting.
        building = new Slices(this);
        building.add(() -> makeBar(left));
        building.add(() -> makeTable(left));
        building.add(() -> tabs.getItem(0).setControl(makeCharts(tabs)));
        building.add(() -> makeRecording(tabs, questions));
        building.add(() -> tabs.getItem(1).setControl(new ChangePane(tabs).control()));
        building.add(() -> tabs.getItem(3).setControl(new SumPane(tabs).control()));
        building.add(() -> makeExposure(tabs));
        building.add(this::start);
    }

    private void start() {
        Registration listening = desk.listen(new Hears());
        addDisposeListener(event -> listening.close());
        styleReadOut();
        shelf.follow(desk.session());
    }

    private static SashForm sash(Composite parent, int direction) {
        SashForm sash = new SashForm(parent, direction | SWT.SMOOTH);
        sash.setSashWidth(Spacing.GAP);
        return sash;
    }

    private void makeBar(Composite left) {
        bar = new SeriesBar(left, shelf);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar.control());
        bar.control().requestLayout();
    }

    private void makeTable(Composite left) {
        table = new EditTable<>(left, PointTable.spec(shelf::series));
        GridDataFactory.fillDefaults().grab(true, true).hint(200, 80).applyTo(table);
        table.onChange((name, rows) -> shelf.change(shelf.series().withPoints(rows)));
        table.requestLayout();
    }

    private Composite makeCharts(Composite tabs) {
        Composite right = new Composite(tabs, SWT.NONE);
        Spacing.tight(1).margins(0, Spacing.TIGHT).applyTo(right);
        charts = sash(right, SWT.VERTICAL);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(charts);
        levels = Ids.name(new ChartCanvas(charts, SWT.BORDER), "sound.levels");
        changes = Ids.name(new ChartCanvas(charts, SWT.BORDER), "sound.changes");
        charts.setWeights(LEVEL_AND_CHANGE);
        facts = Ids.name(new Label(right, SWT.WRAP), "sound.facts");
        GridDataFactory.fillDefaults().grab(true, false).hint(200, SWT.DEFAULT).applyTo(facts);
        return right;
    }

    private void makeRecording(CTabFolder tabs, Function<String, Optional<Path>> questions) {
        recording = new RecordingPane(tabs, desk.work(), questions, this::take);
        tabs.getItem(2).setControl(recording.control());
    }

    private void makeExposure(CTabFolder tabs) {
        exposure = new ExposurePane(tabs);
        tabs.getItem(4).setControl(exposure.control());
    }

    private final class Hears implements DeskListener {
        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            message.clear();
            shelf.follow(session);
        }

        @Override
        public void displayChanged(DisplaySettings settings) {
            styleReadOut();
            table.refresh();
            show();
        }
    }

    private void styleReadOut() {
        ReadOutStyle style = new ReadOutStyle(Numbers.decimalComma(), Coverage.words());
        levels.setReadOutStyle(style);
        changes.setReadOutStyle(style);
    }

    private void take(RecordedLevel level) {
        List<SoundPoint> points = new ArrayList<>(shelf.series().points());
        points.add(level.point());
        SoundSeries series = shelf.series();
        boolean first = series.points().isEmpty();
        shelf.change(new SoundSeries(
                series.name(),
                series.meter(),
                first ? level.calibration().standardUncertaintyDb() : series.commonDb(),
                series.repeatDb(),
                points));
    }

    private void fail(String sentence) {
        if (!isDisposed()) {
            message.show(Severity.ERROR, sentence);
        }
    }

    private void show() {
        if (isDisposed()) {
            return;
        }
        bar.show();
        table.setRows(shelf.series().points());
        table.setReadOnly(!shelf.changeable());
        recording.setChangeable(shelf.changeable());
        showCharts();
        showCaution();
    }

    private void showCharts() {
        SoundSeries series = shelf.series();
        Optional<SoundSeries> other = shelf.other();
        String name = shelf.name().orElse("");
        if (series.points().isEmpty()) {
            levels.showMessage(Texts.say(shelf.open() ? "empty.points" : "empty.project"));
        } else {
            levels.show(PlotSource.of(
                    SoundPlots.levels(series, name, other, shelf.otherName().orElse(""))));
        }
        Optional<SeriesComparison> comparison = other.map(first -> SeriesComparison.of(first, series))
                .filter(found -> !series.points().isEmpty());
        Optional<SeriesComparison> shown =
                comparison.filter(found -> !found.differences().isEmpty());
        shown.ifPresent(found -> changes.show(PlotSource.of(SoundPlots.changes(
                found, series, other, name + " \u2212 " + shelf.otherName().orElse("")))));
        charts.setMaximizedControl(shown.isPresent() ? null : levels);
        facts.setText(SoundFacts.of(series, comparison));
        facts.requestLayout();
    }

    /** The loudest A-weighted level of the table, by the weightings of its tones. */
    private void showCaution() {
        OptionalDouble loudest = shelf.series().points().stream()
                .mapToDouble(point -> point.levelDb()
                        - point.weighting().gainDb(point.frequencyHz())
                        + FrequencyWeighting.A.gainDb(point.frequencyHz()))
                .max();
        List<String> sentences = new ArrayList<>(List.of(ExposureCaution.always(Texts.locale())));
        if (loudest.isPresent()) {
            double rounded = Math.rint(loudest.getAsDouble() * 10) / 10;
            List<String> about = ExposureCaution.about(rounded, Texts.locale());
            about.stream().findFirst().ifPresent(first -> sentences.add(Texts.say("caution.loudest", first)));
            exposure.take(rounded);
        }
        caution.show(Severity.WARNING, String.join(" ", sentences));
    }

    @Override
    public boolean setFocus() {
        return !isDisposed() && table != null && !table.isDisposed() && table.setFocus();
    }
}
