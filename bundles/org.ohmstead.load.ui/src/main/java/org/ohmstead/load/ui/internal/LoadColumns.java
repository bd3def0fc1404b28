// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.table.Column;
import org.ohmstead.workbench.table.Columns;

/** The columns of the bench's loads. */
final class LoadColumns {
    private static final Messages TEXTS = Messages.of(LoadColumns.class);

    private LoadColumns() {}

    static List<Column<LoadRow>> all() {
        return List.of(
                Columns.<LoadRow>shown(
                        "id", TEXTS.text("loads.id"), row -> row.load().id()),
                number("nominal", TEXTS.text("loads.nominal"), Unit.OHM, row -> row.load()
                        .nominalOhms()),
                Columns.<LoadRow>shown(
                                "network",
                                TEXTS.text("loads.network"),
                                row -> row.notation().isBlank() ? Words.NONE : row.notation())
                        .withHover(LoadRow::notation),
                number("value", TEXTS.text("loads.value"), Unit.OHM, LoadRow::ohms)
                        .withHover(LoadColumns::uncertainty),
                Columns.<LoadRow>shownQuantity(
                                "error", TEXTS.text("loads.error"), Measure.named("%"), row -> 100 * row.errorRatio())
                        .withShown(row -> Words.signedPercent(row.errorRatio()))
                        .withOrder(Comparator.comparingDouble(row -> Math.abs(row.errorRatio()))),
                number("limit", TEXTS.text("loads.limit"), Unit.WATT, row -> row.load()
                                .powerLimitWatts())
                        .withHover(row -> TEXTS.text("loads.limitHint")),
                Columns.<LoadRow>shown("state", TEXTS.text("loads.state"), LoadRow::state)
                        .withProblem(LoadRow::mark));
    }

    private static Column<LoadRow> number(String id, String header, Unit unit, ToDoubleFunction<LoadRow> get) {
        return Columns.shownQuantity(id, header, Measure.of(unit), get);
    }

    private static String uncertainty(LoadRow row) {
        double standard = row.load().branches().get(0).standardUncertaintyOhms();
        return Words.stated(row.ohms(), standard / row.ohms());
    }
}
