// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VoidNote;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.units.text.Messages;

/** Which entries were voided, and why. Since nothing in a log changes, only what came since the last look is read. */
public final class VoidLedger {
    private static final Messages TEXTS = Messages.of(VoidLedger.class);
    private static final long OWN = 0;

    private final Path file;
    private final EntryTable table;
    private final JoinedTable joined;
    private final Map<Long, Long> readUpTo = new HashMap<>();
    private Map<String, VoidNote> byTarget = Map.of();

    /** Knows nothing yet. */
    public VoidLedger(Path file, EntryTable table, JoinedTable joined) {
        this.file = file;
        this.table = table;
        this.joined = joined;
    }

    /** Returns the voids by the id, within the log, of what they take back; those of a joined chain count within it. */
    public Map<String, VoidNote> upToDate() throws SQLException, TestLogException {
        take("", OWN, table.ofKind(EntryKind.VOID, seen(OWN)));
        for (JoinedTable.Chain chain : joined.chains()) {
            take(
                    chain.info().label(),
                    chain.number(),
                    joined.ofKind(chain.number(), EntryKind.VOID, seen(chain.number())));
        }
        return byTarget;
    }

    /** Refuses to take back what is not there, is joined or a void itself, or was taken back before. */
    public void requireVoidable(String target) throws SQLException, TestLogException {
        if (target.indexOf('/') >= 0) {
            throw new TestLogException(TEXTS.text("void.joined", target));
        }
        ChainedRow row = table.byId(target).orElseThrow(() -> new TestLogException(TEXTS.text("void.missing", target)));
        if (EntryKind.VOID.word().equals(row.kind())) {
            throw new TestLogException(TEXTS.text("void.ofVoid", target));
        }
        VoidNote already = upToDate().get(target);
        if (already != null) {
            throw new TestLogException(TEXTS.text("void.already", target, already.voidId(), already.reason()));
        }
    }

    private long seen(long number) {
        return readUpTo.getOrDefault(number, 0L);
    }

    private void take(String label, long number, List<ChainedRow> rows) throws TestLogException {
        if (rows.isEmpty()) {
            return;
        }
        Map<String, VoidNote> more = new HashMap<>(byTarget);
        for (ChainedRow row : rows) {
            VoidNote note = EntryBodies.entry(LogFailures.named(file), row, label, Map.of())
                    .voids()
                    .orElseThrow(() -> new TestLogException(TEXTS.text("void.unread", row.entryId(), file.toString())));
            more.putIfAbsent(note.targetId(), note);
        }
        byTarget = more;
        readUpTo.put(number, rows.get(rows.size() - 1).sequence());
    }
}
