// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

/**
 * One resistor of several of a kind, as it lies on the bench with a number on it.
 *
 * @param id id of the kind in the stock
 * @param number which of them, from 1
 */
public record Piece(String id, int number) {
    public Piece {
        Checks.present(id, "id");
        Checks.within(number, 1, Integer.MAX_VALUE, "number");
    }

    /** Returns it as written on the bench: "8R-250W #3". */
    @Override
    public String toString() {
        return id + " #" + number;
    }
}
