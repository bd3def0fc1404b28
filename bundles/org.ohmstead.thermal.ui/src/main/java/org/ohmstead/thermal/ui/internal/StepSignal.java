// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

/** What kind of signal a step carries. */
enum StepSignal {
    STEADY("steady sine"),
    BURST("burst"),
    PROGRAMME("programme");

    private final String words;

    StepSignal(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }
}
