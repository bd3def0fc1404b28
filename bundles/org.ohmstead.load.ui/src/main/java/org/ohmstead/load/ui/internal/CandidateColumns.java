// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.Comparator;
import java.util.List;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.table.Column;
import org.ohmstead.workbench.table.Columns;

/** The columns of the networks found. */
final class CandidateColumns {
    private static final Messages TEXTS = Messages.of(CandidateColumns.class);

    private CandidateColumns() {}

    static List<Column<FoundNetwork>> all() {
        return List.of(
                Columns.<FoundNetwork>shown("network", TEXTS.text("found.network"), FoundNetwork::notation)
                        .withHover(FoundNetwork::notation),
                number("ohms", TEXTS.text("found.value"), Unit.OHM.symbol())
                        .withShown(row -> Words.number(row.ohms()))
                        .withOrder(Comparator.comparingDouble(FoundNetwork::ohms))
                        .withHover(row -> TEXTS.text("found.valueHint", Words.stated(row.ohms(), row.standardRatio()))),
                number("error", TEXTS.text("found.error"), "%")
                        .withShown(row -> Words.signedPercent(row.errorRatio()))
                        .withOrder(Comparator.comparingDouble(row -> Math.abs(row.errorRatio()))),
                number("parts", TEXTS.text("found.parts"), "")
                        .withShown(row -> Integer.toString(row.parts()))
                        .withOrder(Comparator.comparingInt(FoundNetwork::parts)),
                number("limit", TEXTS.text("found.limit"), Unit.WATT.symbol())
                        .withShown(row -> row.powerLimitWatts().isPresent()
                                ? Words.number(row.powerLimitWatts().getAsDouble())
                                : Words.NONE)
                        .withOrder(Comparator.comparingDouble(
                                row -> row.powerLimitWatts().orElse(-1)))
                        .withHover(row -> row.powerLimitWatts().isPresent()
                                ? TEXTS.text("found.limitHint", row.limitingPart())
                                : TEXTS.text("found.noRating")),
                number("worst", TEXTS.text("found.worst"), Unit.OHM.symbol())
                        .withShown(row -> Words.between(row.lowOhms(), row.highOhms()))
                        .withOrder(Comparator.comparingDouble(CandidateColumns::spread))
                        .withHover(row -> TEXTS.text("found.worstHint")),
                Columns.<FoundNetwork>shown("limiting", TEXTS.text("found.limiting"), FoundNetwork::limitingPart),
                Columns.<FoundNetwork>shown(
                                "unbeaten",
                                TEXTS.text("found.unbeaten"),
                                row -> row.unbeaten() ? TEXTS.text("found.yes") : "")
                        .withHover(row -> row.unbeaten() ? TEXTS.text("found.unbeatenHint") : ""));
    }

    private static double spread(FoundNetwork row) {
        return (row.highOhms() - row.lowOhms()) / row.ohms();
    }

    private static Column<FoundNetwork> number(String id, String header, String unit) {
        return Columns.<FoundNetwork>shownQuantity(id, header, Measure.named(unit), row -> 0);
    }
}
