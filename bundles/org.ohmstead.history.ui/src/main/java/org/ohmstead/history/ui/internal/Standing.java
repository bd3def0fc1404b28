// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

/** How a check standard stands. */
enum Standing {
    /** Nothing was found. */
    IN_ORDER("In order", TextTable.Look.OK),
    /** Something wants a look before it gets worse. */
    LOOK("Look", TextTable.Look.WARNING),
    /** The bench must not be used before this is cleared up. */
    STOP("Stop", TextTable.Look.ERROR),
    /** There are not enough values to say. */
    TOO_FEW("Too few values", TextTable.Look.MUTED);

    private final String words;
    private final TextTable.Look look;

    Standing(String words, TextTable.Look look) {
        this.words = words;
        this.look = look;
    }

    /** Returns how it is called. */
    String words() {
        return words;
    }

    /** Returns how it looks. */
    TextTable.Look look() {
        return look;
    }
}
