// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.history.HistoryPlots;
import org.ohmstead.history.Trend;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;

/** A figure of one specimen over time, with its straight line and what that means. */
final class TrendPart {
    private static final Messages TEXTS = Messages.of(TrendPart.class);
    private final Composite area;
    private final Combo figure;
    private final Combo line;
    private final Label sentence;
    private final ChartCanvas chart;
    private List<String> figureIds = List.of();
    private List<Trend> trends = List.of();

    /** Makes the part; {@code chosen} hears which figure the user wants. */
    TrendPart(Composite parent, Consumer<String> chosen) {
        area = new Composite(parent, SWT.NONE);
        Spacing.tight(1).applyTo(area);
        Composite row = new Composite(area, SWT.NONE);
        Spacing.group(4).applyTo(row);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(row);
        label(row, TEXTS.text("trend.figure"));
        figure = Ids.name(new Combo(row, SWT.READ_ONLY), "compare.trend.figure");
        figure.setToolTipText(TEXTS.text("trend.figure.hint"));
        figure.addSelectionListener(SelectionListener.widgetSelectedAdapter(
                event -> chosen.accept(figureIds.get(figure.getSelectionIndex()))));
        label(row, TEXTS.text("trend.of"));
        line = Ids.name(new Combo(row, SWT.READ_ONLY), "compare.trend.line");
        line.setToolTipText(TEXTS.text("trend.of.hint"));
        line.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> showTrend()));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .hint(120, SWT.DEFAULT)
                .applyTo(line);
        chart = Ids.name(new ChartCanvas(area, SWT.BORDER), "compare.trend.chart");
        GridDataFactory.fillDefaults().grab(true, true).applyTo(chart);
        sentence = Ids.name(new Label(area, SWT.WRAP), "compare.trend.sentence");
        GridDataFactory.fillDefaults().grab(true, false).hint(200, SWT.DEFAULT).applyTo(sentence);
    }

    private static void label(Composite row, String text) {
        Label label = new Label(row, SWT.NONE);
        label.setText(text);
        GridDataFactory.swtDefaults().align(SWT.BEGINNING, SWT.CENTER).applyTo(label);
    }

    Composite control() {
        return area;
    }

    ChartCanvas chart() {
        return chart;
    }

    /** Shows the trends of an answer; the line that was in sight stays when it is still there. */
    void show(CompareAnswer answer, String figureId) {
        figureIds = answer.figureIds();
        offer(figure, figureIds.stream().map(TrendPart::words).toList(), words(figureId));
        String before = line.getText();
        trends = answer.trends();
        offer(line, trends.stream().map(trend -> words(trend.line())).toList(), before);
        showTrend();
    }

    private static void offer(Combo combo, List<String> texts, String wanted) {
        if (!texts.equals(List.of(combo.getItems()))) {
            combo.setItems(texts.toArray(String[]::new));
        }
        combo.select(Math.max(0, texts.indexOf(wanted)));
        combo.setEnabled(texts.size() > 1);
        combo.requestLayout();
    }

    private static String words(String figureId) {
        return switch (figureId) {
            case Trend.POWER, Trend.THD, Trend.SUPPLY -> TEXTS.text("trend." + figureId);
            default -> figureId;
        };
    }

    private static String words(Trend.Line line) {
        String place = TEXTS.text("trend.step", line.stepId())
                + (line.channel().isEmpty() ? "" : ", " + line.channel())
                + (line.at().isEmpty() ? "" : ", " + line.at());
        return line.specimen().isEmpty() ? place : place + ", " + line.specimen();
    }

    /** Returns the chart with the figure called as in the list. */
    private Plot named(Plot plot) {
        int at = figure.getSelectionIndex();
        String name = at >= 0 ? figure.getItem(at) : plot.y().label();
        return plot.withAxes(plot.x(), Axis.linear(name, plot.y().unit()));
    }

    private void showTrend() {
        int at = line.getSelectionIndex();
        Optional<Trend> trend = at >= 0 && at < trends.size() ? Optional.of(trends.get(at)) : Optional.empty();
        trend.flatMap(HistoryPlots::trend)
                .ifPresentOrElse(
                        plot -> chart.show(
                                PlotSource.of(named(plot).withTitle("").withNote(""))),
                        () -> chart.showMessage(TEXTS.text("trend.none")));
        sentence.setText(
                trend.map(each -> Shown.sentence(each.sentence())).orElse("").replace("&", "&&"));
        area.requestLayout();
    }
}
