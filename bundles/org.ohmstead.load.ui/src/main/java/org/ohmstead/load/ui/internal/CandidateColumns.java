// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.Comparator;
import java.util.List;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.table.Column;
import org.ohmstead.workbench.table.Columns;

/** The columns of the networks found. */
final class CandidateColumns {
    private CandidateColumns() {}

    static List<Column<FoundNetwork>> all() {
        return List.of(
                Columns.<FoundNetwork>shown("network", "Network", FoundNetwork::notation)
                        .withHover(FoundNetwork::notation),
                number("ohms", "Value", Unit.OHM.symbol())
                        .withShown(row -> Words.number(row.ohms()))
                        .withOrder(Comparator.comparingDouble(FoundNetwork::ohms))
                        .withHover(row -> Words.stated(row.ohms(), row.standardRatio())
                                + ", by the tolerances as uniform distributions."),
                number("error", "Error", "%")
                        .withShown(row -> Words.signedPercent(row.errorRatio()))
                        .withOrder(Comparator.comparingDouble(row -> Math.abs(row.errorRatio()))),
                number("parts", "Parts", "")
                        .withShown(row -> Integer.toString(row.parts()))
                        .withOrder(Comparator.comparingInt(FoundNetwork::parts)),
                number("limit", "Limit", Unit.WATT.symbol())
                        .withShown(row -> row.powerLimitWatts().isPresent()
                                ? Words.number(row.powerLimitWatts().getAsDouble())
                                : Words.NONE)
                        .withOrder(Comparator.comparingDouble(
                                row -> row.powerLimitWatts().orElse(-1)))
                        .withHover(row -> row.powerLimitWatts().isPresent()
                                ? "For as long as one likes; then " + row.limitingPart() + " is at its limit."
                                : "A rating is missing among its parts. Enter it in the parts stock."),
                number("worst", "Worst case", Unit.OHM.symbol())
                        .withShown(row -> Words.between(row.lowOhms(), row.highOhms()))
                        .withOrder(Comparator.comparingDouble(CandidateColumns::spread))
                        .withHover(row -> "Every resistor at the low, or the high, end of its tolerance."),
                Columns.<FoundNetwork>shown("limiting", "Limited by", FoundNetwork::limitingPart),
                Columns.<FoundNetwork>shown("unbeaten", "Unbeaten", row -> row.unbeaten() ? "yes" : "")
                        .withHover(row -> row.unbeaten()
                                ? "No other network found is better in error, worst case, power or parts and as good in"
                                        + " the rest."
                                : ""));
    }

    private static double spread(FoundNetwork row) {
        return (row.highOhms() - row.lowOhms()) / row.ohms();
    }

    private static Column<FoundNetwork> number(String id, String header, String unit) {
        return Columns.<FoundNetwork>shownQuantity(id, header, Measure.named(unit), row -> 0);
    }
}
