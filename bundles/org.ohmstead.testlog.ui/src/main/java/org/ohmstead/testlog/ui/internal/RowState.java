// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.search.IndexedEntry;

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
    VOIDING("voids", "It takes another entry back."),
    /** Joins another log's entries to this one. */
    JOINING("joins", "Another bench's entries were joined to this log here."),
    /** Says that the project was put away. */
    ARCHIVING("archives", "The project was put away in an archive here.");

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

    static RowState of(IndexedEntry entry) {
        return switch (entry.state()) {
            case VALID -> VALID;
            case VOIDED -> VOIDED;
            case NOTE -> NOTE;
            case UNREADABLE -> UNREADABLE;
            case ABOUT -> about(entry.kind());
        };
    }

    private static RowState about(EntryKind kind) {
        return switch (kind) {
            case JOIN -> JOINING;
            case ARCHIVE -> ARCHIVING;
            case READING, FIGURES, NOTE, VOID -> VOIDING;
        };
    }
}
