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

/** Which entries were voided, and why. Since nothing in a log changes, only what came since the last look is read. */
public final class VoidLedger {
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
            throw new TestLogException("The entry " + target
                    + " came with another log. Void it in that log and join it again, so that both agree.");
        }
        ChainedRow row = table.byId(target)
                .orElseThrow(() -> new TestLogException(
                        "There is no entry " + target + " in the log. List the log and check the id."));
        if (EntryKind.VOID.word().equals(row.kind())) {
            throw new TestLogException("The entry " + target
                    + " is a void itself and cannot be taken back. Take the reading again, or add a note.");
        }
        VoidNote already = upToDate().get(target);
        if (already != null) {
            throw new TestLogException("The entry " + target + " was already voided by " + already.voidId()
                    + ", for this reason: " + already.reason() + ". Nothing needs to be done.");
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
            VoidNote note = EntryBodies.entry("the log " + file, row, label, Map.of())
                    .voids()
                    .orElseThrow(() -> new TestLogException("The entry " + row.entryId() + " of the log " + file
                            + " cannot be read, so it is not known which entry it takes back. Verify the log, and take it"
                            + " from a backup."));
            more.putIfAbsent(note.targetId(), note);
        }
        byTarget = more;
        readUpTo.put(number, rows.get(rows.size() - 1).sequence());
    }
}
