// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VerifyFault;
import org.ohmstead.testlog.VerifyReport;

/** One check of a whole log, from the first entry to the last. */
public final class Verification {
    private static final int MOST_DAMAGES = 20;

    private final Path file;
    private final EntryTable table;
    private final Optional<String> expectedHead;
    private final List<VerifyFault> faults = new ArrayList<>();
    private final Map<String, String> kindById = new HashMap<>();
    private final Set<String> voided = new HashSet<>();
    private long checked;
    private long lastSequence;
    private String lastHash = StoredRow.FIRST_PREVIOUS_HASH;
    private boolean headSeen;

    /** Prepares a check of an open log, optionally for the hash of an entry that must be there. */
    public Verification(Path file, EntryTable table, Optional<String> expectedHead) {
        this.file = file;
        this.table = table;
        this.expectedHead = expectedHead;
        this.headSeen = expectedHead.isEmpty() || expectedHead.get().equals(StoredRow.FIRST_PREVIOUS_HASH);
    }

    /** Checks everything and says what is wrong. */
    public VerifyReport run() throws TestLogException {
        part("The file's structure cannot be checked", this::checkFile);
        part("The triggers cannot be read", this::checkGuards);
        part("The entries cannot be read to the end", () -> table.forEach(this::checkRow));
        if (!headSeen) {
            whole(
                    VerifyFault.Kind.HEAD_NOT_FOUND,
                    "No entry has the expected head " + expectedHead.orElseThrow()
                            + ": entries were cut off at the end or replaced, or the head belongs to another log. Compare"
                            + " with a backup.");
        }
        return new VerifyReport(checked, lastHash, faults);
    }

    private interface Part {
        void run() throws SQLException;
    }

    private void part(String whatHappened, Part part) throws TestLogException {
        try {
            part.run();
        } catch (SQLException failure) {
            if (!LogFailures.meansDamage(failure)) {
                throw LogFailures.of(file, "The log was not verified", failure);
            }
            whole(
                    VerifyFault.Kind.FILE_DAMAGED,
                    whatHappened + ", " + checked + " entries were read: " + failure.getMessage()
                            + ". Make a copy of the file, then take it from a backup.");
        }
    }

    private void checkFile() throws SQLException {
        for (String damage : table.damages(MOST_DAMAGES)) {
            whole(VerifyFault.Kind.FILE_DAMAGED, "The file is damaged: " + damage + ".");
        }
    }

    private void checkGuards() throws SQLException {
        Map<String, String> guards = LogSchema.guards();
        Map<String, String> found = table.triggers();
        guards.forEach((name, sql) -> {
            if (!sql.equals(found.get(name))) {
                whole(
                        VerifyFault.Kind.GUARDS_CHANGED,
                        "The trigger " + name
                                + " is missing or was changed, so the file no longer protects its entries.");
            }
        });
        found.keySet().stream()
                .filter(name -> !guards.containsKey(name))
                .forEach(name -> whole(
                        VerifyFault.Kind.GUARDS_CHANGED,
                        "There is a trigger " + name + " that does not belong to a log."));
    }

    private void checkRow(StoredRow row) {
        checked++;
        checkPlace(row);
        if (!row.computedHash().equals(row.hash())) {
            fault(
                    VerifyFault.Kind.CONTENT_CHANGED,
                    row,
                    "was changed: its number, kind, id, time or content does not give its hash");
        }
        checkContent(row);
        headSeen |= expectedHead.map(head -> head.equals(row.hash())).orElse(true);
        lastSequence = row.sequence();
        lastHash = row.hash();
    }

    private void checkPlace(StoredRow row) {
        if (row.sequence() != lastSequence + 1) {
            fault(
                    VerifyFault.Kind.ENTRY_MISSING,
                    row,
                    "comes directly after number " + lastSequence + ", so what stood between was removed");
        }
        if (!row.previousHash().equals(lastHash)) {
            fault(
                    VerifyFault.Kind.CHAIN_BROKEN,
                    row,
                    "does not continue number " + lastSequence
                            + ": one of the two was changed, or entries were removed or put in between");
        }
    }

    private void checkContent(StoredRow row) {
        Optional<EntryKind> kind = EntryKind.ofWord(row.kind());
        if (kind.isEmpty()) {
            fault(VerifyFault.Kind.UNREADABLE, row, "is of an unknown kind, \"" + row.kind() + "\"");
            return;
        }
        if (!row.entryId().matches(kind.get().idPrefix() + "[0-9]{4,15}")) {
            fault(VerifyFault.Kind.UNREADABLE, row, "has an id that does not fit its kind");
        }
        if (!isTime(row.recordedAt())) {
            fault(VerifyFault.Kind.UNREADABLE, row, "has a time that is none, \"" + row.recordedAt() + "\"");
        }
        EntryBodies.fault(row, kind.get())
                .ifPresent(why -> fault(VerifyFault.Kind.UNREADABLE, row, "cannot be read (" + why + ")"));
        if (kind.get() == EntryKind.VOID) {
            EntryBodies.target(row).ifPresent(target -> checkTarget(row, target));
        }
        kindById.put(row.entryId(), row.kind());
    }

    private void checkTarget(StoredRow row, String target) {
        String kind = kindById.get(target);
        if (kind == null) {
            fault(VerifyFault.Kind.VOID_WITHOUT_TARGET, row, "voids " + target + ", which is not in the log before it");
        } else if (EntryKind.VOID.word().equals(kind)) {
            fault(VerifyFault.Kind.VOID_WITHOUT_TARGET, row, "voids " + target + ", which is a void itself");
        } else if (!voided.add(target)) {
            fault(VerifyFault.Kind.VOID_WITHOUT_TARGET, row, "voids " + target + ", which was already voided");
        }
    }

    private static boolean isTime(String text) {
        try {
            return Instant.parse(text).toString().equals(text);
        } catch (DateTimeParseException wrong) {
            return false;
        }
    }

    private void fault(VerifyFault.Kind kind, StoredRow row, String predicate) {
        faults.add(new VerifyFault(
                kind,
                row.sequence(),
                row.entryId(),
                "The entry " + row.entryId() + ", number " + row.sequence() + " of the log, " + predicate + "."));
    }

    private void whole(VerifyFault.Kind kind, String sentence) {
        faults.add(new VerifyFault(kind, 0, "", sentence));
    }
}
