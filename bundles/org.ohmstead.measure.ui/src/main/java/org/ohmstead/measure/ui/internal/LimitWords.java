// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import org.ohmstead.model.StopLimit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;

/** Stop limits in words. */
final class LimitWords {
    private static final Messages TEXTS = Messages.of(LimitWords.class);

    private LimitWords() {}

    /** Returns what ends a step by itself: "supply current above 54 A". */
    static String of(StopLimit limit) {
        String most = Numbers.digits(limit.highest(), 3);
        return switch (limit.quantity()) {
            case SUPPLY_AMPS -> TEXTS.text("limit.amps", most);
            case CASE_CELSIUS -> TEXTS.text("limit.celsius", most);
            case OUTPUT_WATTS -> TEXTS.text("limit.watts", most);
        };
    }
}
