// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.Collection;

/** Short names that are not taken yet. */
final class FreshIds {
    private FreshIds() {}

    /** Returns {@code wanted} when it is free, else it with the lowest free number from 2 behind it: "4ohm-2". */
    static String freeOf(String wanted, Collection<String> taken) {
        String id = wanted;
        for (int number = 2; taken.contains(id); number++) {
            id = wanted + "-" + number;
        }
        return id;
    }

    /** Returns {@code stem} with the lowest free number from 1 behind it: "rating-3". */
    static String numbered(String stem, Collection<String> taken) {
        int number = 1;
        while (taken.contains(stem + "-" + number)) {
            number++;
        }
        return stem + "-" + number;
    }
}
