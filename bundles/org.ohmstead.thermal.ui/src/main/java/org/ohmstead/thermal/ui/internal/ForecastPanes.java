// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;

/** Chart, schedule and table of one forecast, in which the same step is chosen. */
final class ForecastPanes extends SashForm {
    private static final int[] CHART_AND_TABLE = {64, 36};
    private static final double MINUTE = 60;

    private final ForecastChart chart;
    private final ScheduleStrip strip;
    private final Slices later;
    private StepTable table;
    private Optional<Forecast> shown = Optional.empty();
    private Optional<String> selected = Optional.empty();

    /**
     * Makes the panes.
     *
     * @param hands told what the user does to the schedule
     * @param building what is made in later turns: the table; nothing may be shown before
     * @param chosen told which step the user chose in the table
     */
    ForecastPanes(Composite parent, ScheduleStrip.Hands hands, Slices building, Consumer<String> chosen) {
        super(parent, SWT.VERTICAL | SWT.SMOOTH);
        setSashWidth(Spacing.GAP);
        Composite upper = new Composite(this, SWT.BORDER);
        GridLayoutFactory.fillDefaults().spacing(0, 0).applyTo(upper);
        ChartCanvas canvas = Ids.name(new ChartCanvas(upper, SWT.NONE), "forecast.chart");
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(canvas);
        strip = new ScheduleStrip(upper, hands);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(strip);
        chart = new ForecastChart(canvas, strip);
        later = new Slices(this);
        Composite lower = new Composite(this, SWT.NONE);
        lower.setLayout(new FillLayout());
        setWeights(CHART_AND_TABLE);
        building.add(() -> {
            table = new StepTable(lower, chosen);
            table.requestLayout();
        });
        int columns = StepTableColumns.all().size();
        for (int made = 0; made < columns; made += StepTable.COLUMNS_AT_ONCE) {
            building.add(() -> table.addColumns());
        }
    }

    void style(ReadOutStyle style) {
        chart.style(style);
    }

    /**
     * Shows a forecast of at least one step; the chosen step stays chosen.
     *
     * @param dragging whether it is of what is being dragged
     */
    void show(Forecast forecast, boolean dragging) {
        shown = Optional.of(forecast);
        strip.show(ScheduleSlot.of(forecast));
        if (!dragging) {
            strip.say(Optional.empty());
            chart.thaw();
        }
        chart.show(forecast, dragging);
        // The table in a turn of its own, so that the pointer never waits for all of it.
        later.clear();
        later.add(() -> table.setRows(StepTableRow.of(forecast), !dragging));
        later.add(() -> select(selected.filter(forecast.jobIds()::contains)));
    }

    /** Shows a sentence and no steps. */
    void showMessage(String sentence) {
        shown = Optional.empty();
        strip.show(List.of());
        chart.showMessage(sentence);
        later.clear();
        table.setRows(List.of(), false);
        select(Optional.empty());
    }

    /** Another project comes: no step is chosen, and its forecast is shown whole. */
    void forget() {
        selected = Optional.empty();
        showWhole();
    }

    /** The next forecast is shown whole. */
    void showWhole() {
        chart.forgetZoom();
    }

    /** Chooses a step everywhere and puts the chart's crosshair on its end, where it is hottest. */
    void select(Optional<String> stepId) {
        selected = stepId;
        strip.select(stepId);
        table.select(stepId);
        stepId.flatMap(id -> shown.flatMap(forecast -> forecast.job(id)))
                .ifPresent(job -> chart.point(job.endSeconds()));
    }

    /** Chooses a step and shows it large. */
    void reveal(String stepId) {
        select(Optional.of(stepId));
        shown.flatMap(forecast -> forecast.job(stepId)).ifPresent(chart::reveal);
    }

    /** Zooms the time axis around a moment. */
    void zoom(double seconds, double factor) {
        chart.zoom(seconds / MINUTE, factor);
    }

    /** Keeps the time axis as it is until the next forecast that is not of something dragged. */
    void freeze() {
        chart.freeze();
    }

    /** Says what a drag comes to. */
    void say(String sentence) {
        strip.say(Optional.of(sentence));
    }

    /** Lets go what is dragged, without telling anyone. */
    void letGo() {
        strip.letGo();
    }

    boolean dragging() {
        return strip.dragging();
    }

    @Override
    public boolean setFocus() {
        // A composite that is being disposed is asked to give the focus to one of its own.
        return !isDisposed() && !strip.isDisposed() && strip.setFocus();
    }
}
