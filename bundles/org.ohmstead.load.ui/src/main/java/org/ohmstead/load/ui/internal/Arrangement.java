// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import org.ohmstead.load.Stock;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.units.text.Messages;

/** How many branches of the stock a load takes, and what hangs on them. */
enum Arrangement {
    /** A branch for each of two channels. */
    PAIR(2),
    /** One branch on one channel. */
    SINGLE(1),
    /** One branch between two channels. */
    BRIDGED(1);

    private static final Messages TEXTS = Messages.of(Arrangement.class);

    private final int branches;

    Arrangement(int branches) {
        this.branches = branches;
    }

    String words() {
        return TEXTS.text("arrangement." + name());
    }

    int branches() {
        return branches;
    }

    /** Returns what is there for each branch: of every kind the same number, so that all branches come out alike. */
    Stock forEach(Stock stock) {
        return new Stock(stock.items().stream()
                .filter(item -> item.count() >= branches)
                .map(item -> new Stock.Item(item.resistor(), item.count() / branches))
                .toList());
    }

    /** Returns the arrangement that a load of the bench has. */
    static Arrangement of(BenchLoad load) {
        return load.branches().size() > 1 ? PAIR : SINGLE;
    }
}
