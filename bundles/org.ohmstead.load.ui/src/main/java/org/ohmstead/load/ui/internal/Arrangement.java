// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import org.ohmstead.load.Stock;
import org.ohmstead.model.BenchLoad;

/** How many branches of the stock a load takes, and what hangs on them. */
enum Arrangement {
    /** A branch for each of two channels. */
    PAIR("Two, one per channel", 2),
    /** One branch on one channel. */
    SINGLE("One, on one channel", 1),
    /** One branch between two channels. */
    BRIDGED("One, bridged", 1);

    private final String words;
    private final int branches;

    Arrangement(String words, int branches) {
        this.words = words;
        this.branches = branches;
    }

    String words() {
        return words;
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
