// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.util.Arrays;
import java.util.Optional;

/** Whether an entry counts. */
public enum EntryState {
    /** A reading or figures that count. */
    VALID("valid"),
    /** An entry that was voided. */
    VOIDED("voided"),
    /** A note. */
    NOTE("note"),
    /** A void, a join or an archiving: it says something about other entries. */
    ABOUT("about"),
    /** Its stored text cannot be read. */
    UNREADABLE("unreadable");

    private final String word;

    EntryState(String word) {
        this.word = word;
    }

    /** Returns how the state is spelled in a query. */
    public String word() {
        return word;
    }

    /** Returns the state that a word of a query stands for, or empty when there is none. */
    public static Optional<EntryState> ofWord(String word) {
        return Arrays.stream(values()).filter(state -> state.word.equals(word)).findFirst();
    }
}
