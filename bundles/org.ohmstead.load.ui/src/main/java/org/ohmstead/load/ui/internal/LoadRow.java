// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkNotation;
import org.ohmstead.load.NotationException;
import org.ohmstead.load.Stock;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.table.Mark;

/**
 * A load of the bench as a target.
 *
 * @param load which
 * @param network the first branch's; empty when none is written down or it cannot be read
 * @param state a word or two
 * @param mark what is wrong and what to do; empty when all is well
 */
record LoadRow(BenchLoad load, Optional<Network> network, String state, Optional<Mark> mark) {
    private static final Messages TEXTS = Messages.of(LoadRow.class);

    /** Beyond so much a value that was measured is not that of the network any more. */
    private static final double FAR_RATIO = 0.05;

    static LoadRow of(BenchLoad load, Stock stock) {
        LoadBranch branch = load.branches().get(0);
        if (branch.network().isBlank()) {
            return new LoadRow(
                    load,
                    Optional.empty(),
                    TEXTS.text("loads.noNetwork"),
                    Optional.of(new Mark(Severity.NOTE, TEXTS.text("loads.noNetworkHint"))));
        }
        Network network;
        try {
            network = NetworkNotation.parse(branch.network(), stock);
        } catch (NotationException wrong) {
            return new LoadRow(
                    load,
                    Optional.empty(),
                    TEXTS.text("loads.unreadable"),
                    Optional.of(new Mark(Severity.ERROR, wrong.getMessage())));
        }
        double difference = branch.ohms() / network.ohms() - 1;
        if (Math.abs(difference) > FAR_RATIO) {
            String sentence = TEXTS.text("loads.differsHint", Words.ohms(branch.ohms()), Words.ohms(network.ohms()));
            return new LoadRow(
                    load,
                    Optional.of(network),
                    TEXTS.text("loads.differs"),
                    Optional.of(new Mark(Severity.WARNING, sentence)));
        }
        return new LoadRow(load, Optional.of(network), TEXTS.text("loads.inUse"), Optional.empty());
    }

    double ohms() {
        return load.branches().get(0).ohms();
    }

    double errorRatio() {
        return ohms() / load.nominalOhms() - 1;
    }

    String notation() {
        return load.branches().get(0).network();
    }

    /** Returns what is looked for to build this load anew. */
    Target target(Target before) {
        return before.withOhms(load.nominalOhms())
                .withArrangement(
                        before.arrangement().branches() == load.branches().size()
                                ? before.arrangement()
                                : Arrangement.of(load))
                .withPowerWatts(OptionalDouble.of(load.powerLimitWatts()));
    }
}
