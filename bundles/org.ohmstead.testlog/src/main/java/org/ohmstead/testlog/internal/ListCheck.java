// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.ThreadLocalRandom;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;

/**
 * Whether the lists of ids and of kinds, by which the database finds entries, agree with the entries of a chain that was found whole.
 * Going through the lists in their order takes much less time than looking each entry up, as the database's own full check does.
 */
final class ListCheck {
    private static final Messages TEXTS = Messages.of(ListCheck.class);
    private static final String BY_KIND = "SELECT kind, seq FROM entry INDEXED BY entry_by_kind ORDER BY kind, seq";
    private static final String BY_ID =
            "SELECT entry_id, seq FROM entry INDEXED BY sqlite_autoindex_entry_1 ORDER BY entry_id";
    private static final String LISTS =
            "SELECT count(*) FROM sqlite_schema WHERE type = 'index' AND tbl_name = 'entry'";
    private static final int USUAL_LISTS = 2;
    private static final int BUSY_SECONDS = 20;
    private static final int USUAL_SIZE = 1 << 16;

    /** Drawn anew each time, so that nobody can choose another text that gives the same number. */
    private final long factor = ThreadLocalRandom.current().nextLong() | 1;

    private long[] ids = new long[USUAL_SIZE];
    private long[] kinds = new long[USUAL_SIZE];
    private int count;

    /** Returns whether a file has the lists that this knows, and no others. */
    static boolean suits(Connection connection) throws SQLException {
        return LogSchema.number(connection, LISTS) == USUAL_LISTS;
    }

    /** Takes the next entry of the chain, whose numbers count up from 1. */
    void see(RawRow row) {
        if (count == ids.length) {
            ids = Arrays.copyOf(ids, 2 * count);
            kinds = Arrays.copyOf(kinds, 2 * count);
        }
        ids[count] = hash(row.entryId);
        kinds[count] = hash(row.kind);
        count++;
    }

    private long hash(byte[] text) {
        long hash = 0;
        for (byte letter : text) {
            hash = (hash + (letter & 0xff) + 1) * factor;
        }
        return hash;
    }

    /**
     * Returns what is wrong, or empty when nothing is. The two lists are gone through at the same time, the second one with a connection
     * of its own.
     */
    Optional<String> fault(Path file, Connection connection) throws SQLException, TestLogException {
        FutureTask<Boolean> byKind = new FutureTask<>(() -> {
            try (Connection another = LogDatabase.openReadOnly(file, BUSY_SECONDS)) {
                return agrees(another, BY_KIND, kinds, false);
            }
        });
        Thread thread = new Thread(byKind, "log list check");
        thread.setDaemon(true);
        thread.start();
        boolean idsAgree = agrees(connection, BY_ID, ids, true);
        boolean kindsAgree = result(byKind);
        if (!idsAgree) {
            return Optional.of(TEXTS.text("whole.ids"));
        }
        return kindsAgree ? Optional.empty() : Optional.of(TEXTS.text("whole.kinds"));
    }

    private static boolean result(FutureTask<Boolean> check) throws SQLException, TestLogException {
        try {
            return check.get();
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new TestLogException(TEXTS.text("check.stopped"), stopped);
        } catch (ExecutionException failure) {
            if (failure.getCause() instanceof SQLException cause) {
                throw cause;
            }
            if (failure.getCause() instanceof TestLogException cause) {
                throw cause;
            }
            throw new IllegalStateException("the list of kinds could not be checked", failure.getCause());
        }
    }

    /** Entries that were added since the chain was read are passed over. */
    private boolean agrees(Connection connection, String query, long[] expected, boolean eachOnce) throws SQLException {
        byte[] last = {};
        long lastSequence = 0;
        int found = 0;
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(query)) {
            while (result.next()) {
                byte[] text = result.getBytes(1);
                long sequence = result.getLong(2);
                int order = text == null ? -1 : Arrays.compareUnsigned(text, last);
                boolean rises = order > 0 || order == 0 && !eachOnce && sequence > lastSequence;
                if (!rises) {
                    return false;
                }
                last = text;
                lastSequence = sequence;
                if (sequence <= count) {
                    found++;
                    if (sequence < 1 || expected[(int) sequence - 1] != hash(text)) {
                        return false;
                    }
                }
            }
        }
        return found == count;
    }
}
