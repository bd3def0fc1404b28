// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

/** What became of an entry, with the word for it. */
enum RowState {
    /** A reading that counts. */
    VALID("valid", "It counts."),
    /** A reading or note that was taken back. */
    VOIDED("voided", "It was taken back and does not count; it stays in the log."),
    /** Its stored text cannot be understood. */
    UNREADABLE("unreadable", "Its stored text cannot be understood. Verify the log to learn why."),
    /** A remark. */
    NOTE("note", "A remark; no result depends on it."),
    /** Takes another entry back. */
    VOIDING("voids", "It takes another entry back.");

    private final String word;
    private final String explanation;

    RowState(String word, String explanation) {
        this.word = word;
        this.explanation = explanation;
    }

    String word() {
        return word;
    }

    String explanation() {
        return explanation;
    }
}
