// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.load.Network;

/** A network in the making: one entry of the value table or two joined, to which further entries are joined one after the other. */
final class Chain {
    private static final int NONE = -1;

    private final Evaluation evaluation;
    private final ValueTable table;
    private final int[] entries;
    private final boolean[] inSeries;
    private int depth;
    private int one;
    private int other;
    private boolean series;

    Chain(Evaluation evaluation, int mostJoined) {
        this(evaluation, new int[mostJoined], new boolean[mostJoined]);
    }

    private Chain(Evaluation evaluation, int[] entries, boolean[] inSeries) {
        this.evaluation = evaluation;
        table = evaluation.table();
        this.entries = entries;
        this.inSeries = inSeries;
    }

    Chain copy() {
        Chain copy = new Chain(evaluation, entries.clone(), inSeries.clone());
        copy.depth = depth;
        copy.one = one;
        copy.other = other;
        copy.series = series;
        return copy;
    }

    void push(int entry, boolean newInSeries) {
        entries[depth] = entry;
        inSeries[depth] = newInSeries;
        depth++;
    }

    void pop() {
        depth--;
    }

    void core(int entry) {
        one = entry;
        other = NONE;
    }

    void core(int newOne, int newOther, boolean newSeries) {
        one = newOne;
        other = newOther;
        series = newSeries;
    }

    double ohms() {
        double ohms = table.ohms(one);
        if (other != NONE) {
            ohms = Features.joinedOhms(ohms, table.ohms(other), series);
        }
        for (int frame = depth - 1; frame >= 0; frame--) {
            ohms = Features.joinedOhms(ohms, table.ohms(entries[frame]), inSeries[frame]);
        }
        return ohms;
    }

    void evaluate(Features features) {
        evaluation.load(one, features);
        if (other != NONE) {
            evaluation.join(other, features, series);
        }
        for (int frame = depth - 1; frame >= 0; frame--) {
            evaluation.join(entries[frame], features, inSeries[frame]);
        }
    }

    Fraction exact() {
        Fraction value = evaluation.exact(one);
        if (other != NONE) {
            value = joined(value, evaluation.exact(other), series);
        }
        for (int frame = depth - 1; frame >= 0; frame--) {
            value = joined(value, evaluation.exact(entries[frame]), inSeries[frame]);
        }
        return value;
    }

    Network network() {
        Network network = network(one);
        if (other != NONE) {
            network = joined(network, network(other), series);
        }
        for (int frame = depth - 1; frame >= 0; frame--) {
            network = joined(network, network(entries[frame]), inSeries[frame]);
        }
        return Ordering.ordered(network);
    }

    private Network network(int entry) {
        if (table.isSingle(entry)) {
            return Network.of(evaluation.kinds().resistor(table.kind(entry)));
        }
        return joined(network(table.first(entry)), network(table.second(entry)), table.isSeries(entry));
    }

    private static Network joined(Network left, Network right, boolean inSeries) {
        List<Network> members = new ArrayList<>(List.of(left, right));
        return inSeries ? Network.series(members) : Network.parallel(members);
    }

    private static Fraction joined(Fraction left, Fraction right, boolean inSeries) {
        return inSeries ? left.plus(right) : left.parallelWith(right);
    }
}
