// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.table.Column;
import org.ohmstead.workbench.table.Columns;

/** The columns of the bench's loads. */
final class LoadColumns {
    private LoadColumns() {}

    static List<Column<LoadRow>> all() {
        return List.of(
                Columns.<LoadRow>shown("id", "Load", row -> row.load().id()),
                number("nominal", "Stands for", Unit.OHM, row -> row.load().nominalOhms()),
                Columns.<LoadRow>shown(
                                "network", "Network", row -> row.notation().isBlank() ? Words.NONE : row.notation())
                        .withHover(LoadRow::notation),
                number("value", "Value", Unit.OHM, LoadRow::ohms).withHover(LoadColumns::uncertainty),
                Columns.<LoadRow>shownQuantity("error", "Error", Measure.named("%"), row -> 100 * row.errorRatio())
                        .withShown(row -> Words.signedPercent(row.errorRatio()))
                        .withOrder(Comparator.comparingDouble(row -> Math.abs(row.errorRatio()))),
                number("limit", "Limit", Unit.WATT, row -> row.load().powerLimitWatts())
                        .withHover(row -> "What each branch can take for as long as a step lasts."),
                Columns.<LoadRow>shown("state", "State", LoadRow::state).withProblem(LoadRow::mark));
    }

    private static Column<LoadRow> number(String id, String header, Unit unit, ToDoubleFunction<LoadRow> get) {
        return Columns.shownQuantity(id, header, Measure.of(unit), get);
    }

    private static String uncertainty(LoadRow row) {
        double standard = row.load().branches().get(0).standardUncertaintyOhms();
        return Words.stated(row.ohms(), standard / row.ohms());
    }
}
