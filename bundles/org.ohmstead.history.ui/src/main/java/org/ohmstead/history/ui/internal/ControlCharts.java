// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.util.Optional;
import java.util.function.IntConsumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.PlotReadOut;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** The control charts of a check standard, one above the other; a line below says in words what the pointer is on. */
final class ControlCharts {
    private static final Messages TEXTS = Messages.of(ControlCharts.class);
    private static final int[] VALUES_AND_RANGES = {62, 38};

    private final Composite area;
    private final Label words;
    private final IntConsumer chosen;
    private ChartCanvas values;
    private ChartCanvas ranges;
    private Optional<CheckView> check = Optional.empty();
    private String message = "";
    private ReadOutStyle style = ReadOutStyle.USUAL;

    /**
     * Makes the charts, each in a turn of its own.
     *
     * @param building has its turns
     * @param chosen hears of the value that the user pointed out, counted from 0
     */
    ControlCharts(Composite parent, Slices building, IntConsumer chosen) {
        this.chosen = chosen;
        area = new Composite(parent, SWT.NONE);
        Spacing.tight(1).applyTo(area);
        SashForm sash = new SashForm(area, SWT.VERTICAL | SWT.SMOOTH);
        sash.setSashWidth(Spacing.TIGHT);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(sash);
        Composite upper = room(sash);
        Composite lower = room(sash);
        sash.setWeights(VALUES_AND_RANGES);
        words = Ids.name(new Label(area, SWT.WRAP), "quality.point");
        words.setForeground(Tones.of(area).mutedText());
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(200, 2 * words.computeSize(SWT.DEFAULT, SWT.DEFAULT).y)
                .applyTo(words);
        building.add(() -> {
            values = made(upper, "quality.values.chart");
            values.addCursorListener(at -> moved(at, false));
            values.addPointListener(point -> choose(point.x()));
            draw();
        });
        building.add(() -> {
            ranges = made(lower, "quality.ranges.chart");
            ranges.addCursorListener(at -> moved(at, true));
            ranges.addPointListener(point -> choose(point.x()));
            draw();
        });
    }

    private static Composite room(Composite parent) {
        Composite room = new Composite(parent, SWT.NONE);
        room.setLayout(new FillLayout());
        return room;
    }

    private ChartCanvas made(Composite room, String id) {
        ChartCanvas chart = Ids.name(new ChartCanvas(room, SWT.BORDER), id);
        chart.setReadOutStyle(style);
        chart.requestLayout();
        return chart;
    }

    Composite control() {
        return area;
    }

    /** Gives the keyboard to the chart of values, when it is there. */
    boolean focus() {
        return values != null && !values.isDisposed() && values.setFocus();
    }

    void style(ReadOutStyle newStyle) {
        style = newStyle;
        if (values != null) {
            values.setReadOutStyle(newStyle);
        }
        if (ranges != null) {
            ranges.setReadOutStyle(newStyle);
        }
    }

    /** Shows a check standard, or a message instead. */
    void show(Optional<CheckView> newCheck, String newMessage) {
        check = newCheck;
        message = newMessage;
        say("");
        draw();
    }

    private void draw() {
        if (values != null) {
            check.flatMap(CheckView::valuesPlot)
                    .ifPresentOrElse(plot -> values.show(PlotSource.of(plot)), () -> values.showMessage(message));
        }
        if (ranges != null) {
            boolean single = check.flatMap(CheckView::valuesPlot).isPresent();
            check.flatMap(CheckView::rangesPlot)
                    .ifPresentOrElse(
                            plot -> ranges.show(PlotSource.of(plot)),
                            () -> ranges.showMessage(single ? TEXTS.text("chart.first") : ""));
        }
    }

    /** Says in words what stands at a value, as when the pointer rests on it; a value that is not there clears the line. */
    void point(int index) {
        say(check.filter(each -> index >= 0 && index < each.values().size())
                .map(each -> PointWords.of(each, index))
                .orElse(""));
    }

    private void moved(Optional<PlotReadOut> at, boolean ofRanges) {
        if (area.isDisposed() || check.isEmpty()) {
            return;
        }
        int count = check.get().values().size();
        int index = (int) Math.round(at.map(PlotReadOut::x).orElse(0.0)) - 1;
        if (index < 0 || index >= count) {
            say("");
        } else if (ofRanges && index > 0) {
            say(PointWords.range(check.get(), index));
        } else {
            point(index);
        }
    }

    private void choose(double x) {
        chosen.accept((int) Math.round(x) - 1);
    }

    private void say(String sentence) {
        String text = sentence.replace("&", "&&");
        if (!text.equals(words.getText())) {
            words.setText(text);
            words.setToolTipText(sentence.isEmpty() ? null : sentence);
        }
    }
}
