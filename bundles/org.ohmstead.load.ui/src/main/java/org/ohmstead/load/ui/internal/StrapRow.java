// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkNotation;
import org.ohmstead.load.Resistor;
import org.ohmstead.load.search.BankPlan;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.table.Column;
import org.ohmstead.workbench.table.Columns;

/**
 * A load of a planned bank.
 *
 * @param order its place, from 1
 * @param load which load of the project
 * @param strap how it is strapped
 */
record StrapRow(int order, BenchLoad load, BankPlan.Strap strap) {
    private static final Messages TEXTS = Messages.of(StrapRow.class);

    static List<Column<StrapRow>> columns() {
        return List.of(
                number("order", TEXTS.text("strap.order"), "", row -> row.order()),
                Columns.<StrapRow>shown(
                        "load", TEXTS.text("strap.load"), row -> row.load().id()),
                number("nominal", TEXTS.text("strap.nominal"), Unit.OHM.symbol(), row -> row.load()
                        .nominalOhms()),
                number("error", TEXTS.text("strap.error"), "%", row -> 100 * row.worstErrorRatio())
                        .withShown(row -> Words.signedPercent(row.worstErrorRatio()))
                        .withOrder(Comparator.comparingDouble(row -> Math.abs(row.worstErrorRatio())))
                        .withHover(row -> TEXTS.text("strap.errorHint")),
                number("limit", TEXTS.text("strap.limit"), Unit.WATT.symbol(), row -> row.limitWatts())
                        .withShown(row -> row.limitWatts() < 0 ? Words.NONE : Words.number(row.limitWatts()))
                        .withHover(row -> TEXTS.text("strap.limitHint")),
                number("pieces", TEXTS.text("strap.pieces"), "", row -> row.pieces()),
                number("moved", TEXTS.text("strap.moves"), "", row -> row.strap()
                                .movedEnds())
                        .withShown(row -> row.order() == 1
                                ? Words.NONE
                                : Integer.toString(row.strap().movedEnds()))
                        .withHover(row -> TEXTS.text("strap.movesHint")),
                Columns.<StrapRow>shown("networks", TEXTS.text("strap.branches"), StrapRow::networks)
                        .withHover(StrapRow::networks));
    }

    private static Column<StrapRow> number(String id, String header, String unit, ToDoubleFunction<StrapRow> get) {
        return Columns.shownQuantity(id, header, Measure.named(unit), get);
    }

    String networks() {
        return strap.branches().stream()
                .map(branch -> NetworkNotation.format(branch.network()))
                .collect(Collectors.joining(TEXTS.text("strap.and")));
    }

    double worstErrorRatio() {
        return strap.branches().stream()
                .map(BankPlan.Branch::errorRatio)
                .max(Comparator.comparingDouble(Math::abs))
                .orElseThrow();
    }

    /** Returns the least limit of its branches in watts; -1 when one is not known. */
    double limitWatts() {
        return strap.branches().stream()
                .mapToDouble(branch -> branch.powerLimitWatts().orElse(-1))
                .min()
                .orElseThrow();
    }

    int pieces() {
        return strap.branches().stream()
                .mapToInt(branch -> branch.pieces().size())
                .sum();
    }

    /** Returns the network of a branch with each resistor called as the piece on the bench and its ends from left to right. */
    static Network named(BankPlan.Branch branch) {
        List<String> names = new ArrayList<>();
        for (int index = 0; index < branch.pieces().size(); index++) {
            names.add(branch.pieces().get(index) + (branch.turned().get(index) ? " (2\u20131)" : " (1\u20132)"));
        }
        return named(branch.network(), names.iterator());
    }

    private static Network named(Network network, Iterator<String> names) {
        if (network instanceof Network.Series series) {
            return Network.series(series.members().stream()
                    .map(member -> named(member, names))
                    .toList());
        }
        if (network instanceof Network.Parallel parallel) {
            return Network.parallel(parallel.members().stream()
                    .map(member -> named(member, names))
                    .toList());
        }
        Resistor kind = ((Network.Single) network).resistor();
        return Network.of(new Resistor(names.next(), kind.ohms(), kind.toleranceRatio(), kind.rating(), kind.traits()));
    }
}
