// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit.internal;

/** Lets two measurements go on in turn, one call each. */
public final class Turns {
    private final boolean[] ended = new boolean[2];
    private int turn;

    /** Returns the gate of one of the two, 0 or 1. */
    public Gate gate(int party) {
        return () -> pass(party);
    }

    private synchronized void pass(int party) throws InterruptedException {
        turn = 1 - party;
        notifyAll();
        while (turn != party && !ended[1 - party]) {
            wait();
        }
    }

    /** Lets the other go on alone. */
    public synchronized void end(int party) {
        ended[party] = true;
        notifyAll();
    }
}
