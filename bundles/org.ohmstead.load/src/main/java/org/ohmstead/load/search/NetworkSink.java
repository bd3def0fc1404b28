// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

/** Takes in the networks that a walk meets. */
interface NetworkSink {
    /** Returns the lowest resistance that still counts. */
    double lowOhms();

    /** Returns the highest resistance that still counts. */
    double highOhms();

    /** Says that networks of a bag come next. */
    void begin(Bag bag, Kinds kinds);

    /** Takes in a network; the chain is only lent. */
    void accept(Chain chain, double ohms, int parts);
}
