// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import org.ohmstead.units.text.Messages;

/** How a check standard stands. */
enum Standing {
    /** Nothing was found. */
    IN_ORDER(TextTable.Look.OK),
    /** Something wants a look before it gets worse. */
    LOOK(TextTable.Look.WARNING),
    /** The bench must not be used before this is cleared up. */
    STOP(TextTable.Look.ERROR),
    /** There are not enough values to say. */
    TOO_FEW(TextTable.Look.MUTED);

    private static final Messages TEXTS = Messages.of(Standing.class);

    private final TextTable.Look look;

    Standing(TextTable.Look look) {
        this.look = look;
    }

    /** Returns how it is called. */
    String words() {
        return TEXTS.text("standing." + name());
    }

    /** Returns how it looks. */
    TextTable.Look look() {
        return look;
    }
}
