// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import org.ohmstead.model.StopLimit;
import org.ohmstead.workbench.look.Numbers;

/** Stop limits in words. */
final class LimitWords {
    private LimitWords() {}

    /** Returns what ends a step by itself: "supply current above 54 A". */
    static String of(StopLimit limit) {
        String most = Numbers.digits(limit.highest(), 3);
        return switch (limit.quantity()) {
            case SUPPLY_AMPS -> "supply current above " + most + " A";
            case CASE_CELSIUS -> "case hotter than " + most + " \u00b0C";
            case OUTPUT_WATTS -> "output above " + most + " W in a load";
        };
    }
}
