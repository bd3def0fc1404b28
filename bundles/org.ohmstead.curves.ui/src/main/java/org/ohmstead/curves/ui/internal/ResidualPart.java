// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.curves.study.PowerStudy;
import org.ohmstead.curves.study.PowerStudy.PlacedLoad;
import org.ohmstead.curves.study.ResidualPoint;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Palette;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.ChosenPoint;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.session.ProjectDesk;

/** How far each reading lies off the joint curve. */
final class ResidualPart implements StudyPart {
    private static final Messages TEXTS = Messages.of(ResidualPart.class);

    private static final int[] CHART_AND_TABLE = {55, 45};

    private final ProjectDesk desk;
    private final SashForm sash;
    private final ChartCanvas chart;
    private final SheetTable table;
    private List<ResidualPoint> shown = List.of();

    ResidualPart(Composite parent, ProjectDesk desk) {
        this.desk = desk;
        sash = new SashForm(parent, SWT.HORIZONTAL | SWT.SMOOTH);
        sash.setSashWidth(Spacing.GAP);
        chart = Ids.name(new ChartCanvas(sash, SWT.BORDER), "power.residuals.chart");
        table = new SheetTable(sash, "power.residuals");
        sash.setWeights(CHART_AND_TABLE);
        Runnable noPoints = chart.addPointListener(this::pointChosen);
        sash.addDisposeListener(event -> noPoints.run());
        table.control().addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> rowChosen()));
    }

    @Override
    public String title() {
        return TEXTS.text("residuals.title");
    }

    @Override
    public Control control() {
        return sash;
    }

    @Override
    public void show(InView view) {
        chart.setReadOutStyle(
                new ReadOutStyle(desk.display().decimalComma(), desk.display().coverageWords()));
        PowerStudy study = view.study().flatMap(JointStudy::study).orElse(null);
        if (study == null) {
            shown = List.of();
            chart.showMessage(view.study().map(joint -> joint.findings().get(0)).orElse(view.whyNothing()));
            table.show(() -> Sheet.EMPTY);
            return;
        }
        shown = study.fit().diagnostics().residuals();
        chart.show(
                PlotSource.of(Numbers.withPoint(() -> plot(study, view.curves().loadsOhms()))));
        table.show(() -> StudySheets.residuals(study));
        for (int row = 0; row < shown.size(); row++) {
            TableItem item = table.control().getItem(row);
            item.setForeground(shown.get(row).outlier() ? Tones.of(sash).warning() : null);
        }
    }

    /** Returns the chart: residuals in standard deviations over the supply volts, the outliers named. */
    static Plot plot(PowerStudy study, List<Double> loadsOhms) {
        Plot plot = Plot.of(
                "",
                Axis.linear(TEXTS.text("plot.supply"), "V"),
                Axis.linear(TEXTS.text("plot.residual"), TEXTS.text("plot.deviations")));
        Map<PlacedLoad, List<PlotPoint>> byLoad = new LinkedHashMap<>();
        study.loads().forEach(load -> byLoad.put(load, new ArrayList<>()));
        for (ResidualPoint each : study.fit().diagnostics().residuals()) {
            byLoad.get(load(each)).add(new PlotPoint(each.point().supplyVolts(), each.studentised()));
        }
        int next = loadsOhms.size();
        for (Map.Entry<PlacedLoad, List<PlotPoint>> each : byLoad.entrySet()) {
            boolean first = byLoad.keySet().stream()
                    .filter(load -> load.loadOhms() == each.getKey().loadOhms())
                    .findFirst()
                    .equals(Optional.of(each.getKey()));
            int tone = first ? loadsOhms.indexOf(each.getKey().loadOhms()) : next++;
            plot = plot.withSeries(new Series(
                    Words.load(each.getKey()), each.getValue(), Style.MARKERS, Math.max(0, tone) % Palette.TONES));
        }
        plot = plot.withMark(Mark.horizontal(0, ""))
                .withMark(Mark.horizontal(ResidualPoint.OUTLIER_FROM, ""))
                .withMark(Mark.horizontal(-ResidualPoint.OUTLIER_FROM, ""));
        for (ResidualPoint each : study.fit().diagnostics().outliers()) {
            plot = plot.withMark(new Mark.Point(
                    each.point().supplyVolts(),
                    each.studentised(),
                    each.point().label(),
                    MarkerShape.HOLLOW_SQUARE,
                    OptionalInt.empty()));
        }
        return plot;
    }

    private static PlacedLoad load(ResidualPoint residual) {
        return new PlacedLoad(residual.point().loadOhms(), residual.point().mode());
    }

    private void pointChosen(ChosenPoint point) {
        List<ResidualPoint> series = shown.stream()
                .filter(each -> Words.load(load(each)).equals(point.series()))
                .toList();
        if (point.index() < series.size()) {
            choose(series.get(point.index()));
        }
    }

    private void rowChosen() {
        int row = table.control().getSelectionIndex();
        if (row >= 0 && row < shown.size()) {
            choose(shown.get(row));
        }
    }

    private void choose(ResidualPoint residual) {
        desk.log().entry(residual.point().readingId()).ifPresent(entry -> desk.choose(Optional.of(entry)));
    }
}
