// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.util.Map;
import java.util.TreeMap;

/** Keeps texts by key from one session of the workbench to the next. */
interface ViewMemory {
    /** The key of the name of who writes into the log. */
    String OPERATOR = "operator";

    /** Returns what was kept; empty when nothing was. */
    String get(String key);

    /** Keeps a text; an empty one is forgotten. */
    void put(String key, String value);

    /** Returns a memory that lasts as long as the process. */
    static ViewMemory passing() {
        Map<String, String> kept = new TreeMap<>();
        return new ViewMemory() {
            @Override
            public String get(String key) {
                return kept.getOrDefault(key, "");
            }

            @Override
            public void put(String key, String value) {
                kept.put(key, value);
            }
        };
    }
}
