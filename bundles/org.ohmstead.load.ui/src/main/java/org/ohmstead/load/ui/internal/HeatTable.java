// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.load.PartHeat;
import org.ohmstead.model.Severity;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.table.Column;
import org.ohmstead.workbench.table.Columns;
import org.ohmstead.workbench.table.Mark;

/** What each resistor of a network takes: a bar of its share of what it may take, and the figures. */
final class HeatTable {
    private static final Messages TEXTS = Messages.of(HeatTable.class);

    private static final int BAR_COLUMN = 3;
    private static final int BAR_WIDTH = 120;
    private static final int BAR_INSET = 3;
    private static final int FAINT = 110;

    private final ResultTable<Row> table;
    private double widest = 1;

    /**
     * A resistor.
     *
     * @param label its id
     * @param ohms its value, hot where that is known
     * @param share of the power
     * @param watts that it takes; empty without a power
     * @param allowedWatts that it may take; empty without a rating
     * @param celsius of its hottest known spot
     * @param where what that spot is
     * @param limiting whether it is the first to reach its limit
     */
    record Row(
            String label,
            double ohms,
            double share,
            OptionalDouble watts,
            OptionalDouble allowedWatts,
            OptionalDouble celsius,
            String where,
            boolean limiting) {
        /** Returns what it takes over what it may take. */
        OptionalDouble used() {
            return watts.isPresent() && allowedWatts.isPresent() && allowedWatts.getAsDouble() > 0
                    ? OptionalDouble.of(watts.getAsDouble() / allowedWatts.getAsDouble())
                    : OptionalDouble.empty();
        }

        boolean over() {
            return used().orElse(0) > 1 + 1e-9;
        }
    }

    HeatTable(Composite parent) {
        table = new ResultTable<>(parent, "design.heat", TEXTS.text("heat.title"), false, columns());
        table.getTable().getColumn(BAR_COLUMN).setWidth(BAR_WIDTH);
        table.getTable().addListener(SWT.EraseItem, this::paintBar);
    }

    ResultTable<Row> control() {
        return table;
    }

    private static List<Column<Row>> columns() {
        return List.of(
                Columns.<Row>shown("part", TEXTS.text("heat.part"), Row::label),
                Columns.<Row>shownQuantity("share", TEXTS.text("heat.share"), Measure.percentOfOne(), Row::share)
                        .withHover(row -> TEXTS.text("heat.shareHint", Words.percent(row.share() / 100))),
                optional("watts", TEXTS.text("heat.takes"), Unit.WATT, Row::watts),
                Columns.<Row>shown("used", TEXTS.text("heat.used"), HeatTable::used)
                        .withProblem(row -> row.over()
                                ? Optional.of(new Mark(Severity.ERROR, TEXTS.text("heat.over")))
                                : Optional.empty()),
                optional("allowed", TEXTS.text("heat.allowed"), Unit.WATT, Row::allowedWatts)
                        .withHover(row -> TEXTS.text("heat.allowedHint")),
                Columns.<Row>shownQuantity("ohms", TEXTS.text("heat.hot"), Measure.of(Unit.OHM), Row::ohms),
                Columns.<Row>shown(
                                "celsius",
                                TEXTS.text("heat.celsius"),
                                row -> row.celsius().isPresent()
                                        ? Words.celsius(row.celsius().getAsDouble()) + " " + row.where()
                                        : Words.NONE)
                        .withHover(row -> TEXTS.text("heat.celsiusHint")));
    }

    private static Column<Row> optional(String id, String header, Unit unit, Function<Row, OptionalDouble> get) {
        return Columns.<Row>shownQuantity(
                        id, header, Measure.of(unit), row -> get.apply(row).orElse(-1))
                .withShown(row ->
                        get.apply(row).isPresent() ? Words.number(get.apply(row).getAsDouble()) : Words.NONE);
    }

    private static String used(Row row) {
        String text = row.used().isPresent()
                ? Words.number(100 * row.used().getAsDouble()) + " %"
                : row.watts().isPresent() ? TEXTS.text("heat.noRating") : Words.NONE;
        if (row.over()) {
            return TEXTS.text("heat.tooMuch", text);
        }
        return row.limiting() ? TEXTS.text("heat.limits", text) : text;
    }

    void show(Design design) {
        List<Row> rows = IntStream.range(0, design.analysis().size())
                .mapToObj(index -> row(design, index))
                .toList();
        widest = Math.max(
                1, rows.stream().mapToDouble(row -> row.used().orElse(0)).max().orElse(1));
        table.setTitle(title(design));
        table.setRows(rows);
    }

    private static String title(Design design) {
        if (design.powerWatts().isEmpty()) {
            return TEXTS.text("heat.noPower");
        }
        String power = Words.watts(design.powerWatts().getAsDouble());
        if (design.heat().isEmpty()) {
            return TEXTS.text("heat.runaway", power);
        }
        return design.atLimit() ? TEXTS.text("heat.atLimit", power) : TEXTS.text("heat.at", power);
    }

    void clear() {
        table.setTitle(TEXTS.text("heat.title"));
        table.setRows(List.of());
    }

    private static Row row(Design design, int index) {
        boolean limiting = design.analysis().limitingIndex().orElse(-1) == index;
        OptionalDouble allowed = design.analysis().allowedWatts(index);
        String label = design.wiring().pieces().get(index).label();
        double share = design.analysis().share(index);
        if (design.heat().isEmpty()) {
            return new Row(
                    label,
                    design.analysis().resistor(index).ohms(),
                    share,
                    OptionalDouble.empty(),
                    allowed,
                    OptionalDouble.empty(),
                    "",
                    limiting);
        }
        PartHeat heat = design.heat().get().parts().get(index);
        OptionalDouble celsius = heat.elementCelsius().isPresent() ? heat.elementCelsius() : heat.surfaceCelsius();
        String where = heat.elementCelsius().isPresent()
                ? TEXTS.text("heat.wire")
                : heat.caseCelsius().isPresent() ? TEXTS.text("heat.case") : TEXTS.text("heat.rated");
        return new Row(
                label,
                heat.hotOhms(),
                heat.share(),
                OptionalDouble.of(heat.powerWatts()),
                allowed,
                celsius,
                where,
                limiting);
    }

    /** Paints the bar behind the cell's text, as far as the fullest resistor's. */
    private void paintBar(Event event) {
        if (event.index != BAR_COLUMN) {
            return;
        }
        int index = table.getTable().indexOf((TableItem) event.item);
        if (index < 0 || index >= table.shown().size()) {
            return;
        }
        Row row = table.shown().get(index);
        int width = table.getTable().getColumn(BAR_COLUMN).getWidth() - 2 * BAR_INSET;
        int length = (int) Math.round(width * row.used().orElse(0) / widest);
        if (length <= 0) {
            return;
        }
        Rectangle cell = new Rectangle(event.x + BAR_INSET, event.y + BAR_INSET, length, event.height - 2 * BAR_INSET);
        Tones tones = Tones.of(table);
        int alpha = event.gc.getAlpha();
        event.gc.setAlpha(FAINT);
        event.gc.setBackground(row.over() ? tones.error() : tones.accent());
        event.gc.fillRectangle(cell);
        event.gc.setAlpha(alpha);
    }
}
