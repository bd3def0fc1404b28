// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.chain;

import java.util.Map;
import java.util.Optional;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VoidNote;
import org.ohmstead.testlog.internal.EntryBodies;
import org.ohmstead.testlog.internal.LogRefusals;

/** Makes entries of rows. */
public final class EntryReader {
    private EntryReader() {}

    /**
     * Returns the entry that a row holds. When its content cannot be read, it comes without; see {@link LogEntry#readable()}.
     *
     * @param where the row is, for the sentence of a failure, such as "the log a.db"
     * @param row the row
     * @param label label of its chain, which its ids get before them; empty for a log's own
     * @param voids voids of the chain, by the id, with the label, of what they take back
     * @throws TestLogException when its kind or its time is not one
     */
    public static LogEntry entry(String where, ChainedRow row, String label, Map<String, VoidNote> voids)
            throws TestLogException {
        return EntryBodies.entry(where, row, label, voids);
    }

    /** Returns what is wrong with the kind or the content of a row, in a few words, or empty when it can be read. */
    public static Optional<String> fault(ChainedRow row) {
        Optional<EntryKind> kind = EntryKind.ofWord(row.kind());
        return kind.isEmpty() ? Optional.of(LogRefusals.words("kind", row.kind())) : EntryBodies.fault(row, kind.get());
    }
}
