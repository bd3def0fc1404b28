// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.ControlListener;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.curves.VerdictWords;
import org.ohmstead.model.VerdictRule;
import org.ohmstead.report.ResultsSheet;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** The verdicts above the pages: one sentence, then a line for each rating. */
final class VerdictStrip {
    private static final int MOST_LINES = 6;
    private static final int RATING = 1;
    private static final int MEASURED = 4;
    private static final int LEAST_RATING_WIDTH = 100;
    private static final int PADDING = 6;

    private final Composite strip;
    private final Label sentence;
    private final Table table;
    private final VerdictMark.Images marks;
    private List<RatingLine> lines = List.of();
    private Optional<ResultsSheet> shown = Optional.empty();

    VerdictStrip(Composite parent) {
        strip = new Composite(parent, SWT.NONE);
        Spacing.tight(1).applyTo(strip);
        sentence = Ids.name(new Label(strip, SWT.WRAP), "sheet.conclusion");
        Font bold =
                FontDescriptor.createFrom(sentence.getFont()).setStyle(SWT.BOLD).createFont(strip.getDisplay());
        sentence.setFont(bold);
        sentence.addDisposeListener(event -> bold.dispose());
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(LEAST_RATING_WIDTH, SWT.DEFAULT)
                .applyTo(sentence);
        table = Ids.name(new Table(strip, SWT.FULL_SELECTION | SWT.SINGLE | SWT.BORDER), "sheet.ratings");
        table.setHeaderVisible(true);
        marks = new VerdictMark.Images(table);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(table);
        table.addListener(SWT.MouseMove, this::hover);
    }

    /** Makes the columns; a sheet can be shown when they are there. */
    void addColumns() {
        column("verdict", SWT.LEFT);
        column("rating", SWT.LEFT);
        column("supply", SWT.RIGHT);
        column("rated", SWT.RIGHT);
        column("measured", SWT.RIGHT);
        column("probability", SWT.RIGHT);
        column("risk", SWT.RIGHT);
        fitColumns();
        table.addControlListener(ControlListener.controlResizedAdapter(event -> fitRating()));
    }

    private void column(String name, int style) {
        TableColumn column = new TableColumn(table, style);
        column.setText(Texts.say("column." + name));
        column.setToolTipText(Texts.say("column." + name + ".hint"));
    }

    Composite control() {
        return strip;
    }

    void show(ResultsSheet sheet) {
        shown = Optional.of(sheet);
        VerdictRule rule = sheet.project().sheet().rule();
        List<RatingLine> fresh = sheet.ratings().stream().map(RatingLine::of).toList();
        sentence.setText(RatingLine.conclusion(fresh, rule).replace("&", "&&"));
        sentence.setToolTipText(Numbers.inSentence(VerdictWords.sentence(rule)));
        table.getColumn(MEASURED).setText(Texts.say("column.measured.with", Coverage.words()));
        if (!fresh.equals(lines)) {
            lines = fresh;
            fill();
        }
        strip.getParent().layout(true, true);
    }

    /** Shows the same sheet after the way in which numbers are shown has changed. */
    void refresh() {
        shown.ifPresent(this::show);
    }

    private void fill() {
        Tones tones = Tones.of(table);
        table.setRedraw(false);
        table.setItemCount(lines.size());
        for (int i = 0; i < lines.size(); i++) {
            RatingLine line = lines.get(i);
            TableItem item = table.getItem(i);
            item.setImage(0, marks.of(line.mark()));
            item.setText(new String[] {
                line.mark().word(),
                line.rating(),
                line.supplyVolts(),
                line.ratedWatts(),
                line.measuredWatts(),
                line.probability(),
                line.risk()
            });
            item.setForeground(0, line.mark().tone(tones));
        }
        table.setRedraw(true);
        fitColumns();
        GridData data = (GridData) table.getLayoutData();
        data.exclude = lines.isEmpty();
        table.setVisible(!lines.isEmpty());
        data.heightHint =
                table.getHeaderHeight() + table.getItemHeight() * Math.min(MOST_LINES, Math.max(1, lines.size()));
    }

    /** Makes the columns as wide as what is in them. */
    private void fitColumns() {
        for (int i = 0; i < table.getColumnCount(); i++) {
            if (i != RATING) {
                table.getColumn(i).pack();
                table.getColumn(i).setWidth(table.getColumn(i).getWidth() + PADDING);
            }
        }
        fitRating();
    }

    /** Gives the maker's words the width that the others leave. */
    private void fitRating() {
        int others = 0;
        for (int i = 0; i < table.getColumnCount(); i++) {
            if (i != RATING) {
                others += table.getColumn(i).getWidth();
            }
        }
        table.getColumn(RATING).setWidth(Math.max(LEAST_RATING_WIDTH, table.getClientArea().width - others));
    }

    private void hover(Event event) {
        TableItem item = table.getItem(new Point(event.x, event.y));
        String text = item == null ? null : lines.get(table.indexOf(item)).hover();
        if (text == null ? table.getToolTipText() != null : !text.equals(table.getToolTipText())) {
            table.setToolTipText(text);
        }
    }
}
