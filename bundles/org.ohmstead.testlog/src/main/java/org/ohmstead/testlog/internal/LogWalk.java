// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.JoinNote;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VoidNote;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.chain.RowSource;

/** Goes through the entries of a log in their order; joined ones come directly before the entry that says that they were joined. */
public final class LogWalk {
    private static final int PAGE = 256;

    private final String where;
    private final RowSource rows;
    private final Map<String, VoidNote> voids;
    private final boolean includeJoined;

    /** Prepares a walk; {@code where} names the log in sentences. */
    public LogWalk(String where, RowSource rows, Map<String, VoidNote> voids, boolean includeJoined) {
        this.where = where;
        this.rows = rows;
        this.voids = voids;
        this.includeJoined = includeJoined;
    }

    /** Hands over the entries of a log's own chain up to a number, and those that were joined to it. */
    public void forEach(String chain, long last, Consumer<LogEntry> consumer) throws TestLogException {
        forEach(chain, "", 0, last, consumer);
    }

    private void forEach(String chain, String label, long first, long last, Consumer<LogEntry> consumer)
            throws TestLogException {
        long after = first;
        while (after < last) {
            List<ChainedRow> page = rows.rows(chain, after, (int) Math.min(PAGE, last - after));
            if (page.isEmpty()) {
                return;
            }
            for (ChainedRow row : page) {
                if (includeJoined && label.isEmpty() && EntryKind.JOIN.word().equals(row.kind())) {
                    joined(row, consumer);
                }
                consumer.accept(EntryBodies.entry(where, row, label, voids));
            }
            after = page.get(page.size() - 1).sequence();
        }
    }

    private void joined(ChainedRow row, Consumer<LogEntry> consumer) throws TestLogException {
        Optional<JoinNote> note = EntryBodies.joinNote(row);
        if (note.isPresent()) {
            for (ChainInfo chain : rows.chains()) {
                if (chain.chain().equals(note.get().chain()) && !chain.label().isEmpty()) {
                    forEach(
                            chain.chain(),
                            chain.label(),
                            note.get().afterSequence(),
                            note.get().lastSequence(),
                            consumer);
                }
            }
        }
    }
}
