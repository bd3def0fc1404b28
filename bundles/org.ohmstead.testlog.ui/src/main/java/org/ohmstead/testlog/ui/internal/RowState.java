// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.search.IndexedEntry;
import org.ohmstead.units.text.Messages;

/** What became of an entry, with the word for it. */
enum RowState {
    /** A reading that counts. */
    VALID,
    /** A reading or note that was taken back. */
    VOIDED,
    /** Its stored text cannot be understood. */
    UNREADABLE,
    /** A remark. */
    NOTE,
    /** Takes another entry back. */
    VOIDING,
    /** Joins another log's entries to this one. */
    JOINING,
    /** Says that the project was put away. */
    ARCHIVING;

    private static final Messages TEXTS = Messages.of(RowState.class);

    String word() {
        return TEXTS.text("state." + name());
    }

    String explanation() {
        return TEXTS.text("state." + name() + ".why");
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
