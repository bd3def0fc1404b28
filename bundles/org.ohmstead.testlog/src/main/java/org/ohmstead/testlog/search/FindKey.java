// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.util.Arrays;
import java.util.Optional;

/** The words that a query writes before a colon. */
enum FindKey {
    KIND("kind"),
    CHAIN("chain"),
    AMPLIFIER("amplifier"),
    SERIAL("serial"),
    BENCH("bench"),
    OPERATOR("operator"),
    MODE("mode"),
    LOAD("load"),
    STEP("step"),
    FROM("from"),
    TO("to"),
    STATE("state"),
    OVERDUE("overdue");

    private final String word;

    FindKey(String word) {
        this.word = word;
    }

    String word() {
        return word;
    }

    static Optional<FindKey> ofWord(String word) {
        return Arrays.stream(values()).filter(key -> key.word.equals(word)).findFirst();
    }
}
