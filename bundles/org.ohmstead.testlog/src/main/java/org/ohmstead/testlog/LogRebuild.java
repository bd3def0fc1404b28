// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.chain.RowSource;
import org.ohmstead.testlog.internal.JoinedTable;
import org.ohmstead.testlog.internal.LogDatabase;
import org.ohmstead.testlog.internal.LogFailures;
import org.ohmstead.testlog.internal.LogRefusals;
import org.ohmstead.testlog.internal.Transaction;

/** Makes the file of a log from rows that came from elsewhere, each exactly as it was stored, and verifies it. */
public final class LogRebuild {
    private static final int PAGE = 500;
    private static final String INSERT =
            "INSERT INTO entry (seq, kind, entry_id, recorded_at, body, previous_hash, hash) VALUES (?, ?, ?, ?, ?, ?,"
                    + " ?)";

    private LogRebuild() {}

    /**
     * Makes a log.
     *
     * @param source the rows; the chain with the empty label becomes the log's own, the others the joined ones, in their order
     * @param target file to be made; there must be none yet
     * @throws TestLogException when the rows are not those of a whole log, cannot be read, or the file not be written; then there is none
     */
    public static void write(RowSource source, Path target) throws TestLogException {
        if (Files.exists(target)) {
            throw LogRefusals.of("make.there", target);
        }
        boolean whole = false;
        try {
            LogFailures.guard(target, LogFailures.MAKE, () -> {
                try (Connection connection = LogDatabase.open(target, TestLog.BUSY_SECONDS)) {
                    return Transaction.once(connection, () -> fill(source, connection));
                }
            });
            try (TestLog log = TestLog.openReadOnly(target)) {
                VerifyReport report = log.verify();
                if (!report.intact()) {
                    throw LogRefusals.of("make.rows", report.faults().get(0).sentence());
                }
            }
            whole = true;
        } finally {
            if (!whole) {
                delete(target);
            }
        }
    }

    private static void delete(Path target) throws TestLogException {
        for (String ending : List.of("", "-wal", "-shm")) {
            Path file = target.resolveSibling(target.getFileName() + ending);
            LogFailures.guard(file, LogFailures.DELETE, () -> Files.deleteIfExists(file));
        }
    }

    private static long fill(RowSource source, Connection connection) throws SQLException, TestLogException {
        JoinedTable joined = new JoinedTable(connection);
        long number = 0;
        for (ChainInfo chain : source.chains()) {
            boolean own = chain.label().isEmpty();
            if (!own) {
                number++;
                joined.insertChain(number, chain.chain(), chain.label(), chain.name());
            }
            long after = chain.firstSequence() - 1;
            for (List<ChainedRow> rows = source.rows(chain.chain(), after, PAGE);
                    !rows.isEmpty();
                    rows = source.rows(chain.chain(), after, PAGE)) {
                if (own) {
                    insert(connection, rows);
                } else {
                    joined.insert(number, rows);
                }
                after = rows.get(rows.size() - 1).sequence();
            }
        }
        return number;
    }

    private static void insert(Connection connection, List<ChainedRow> rows) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(INSERT)) {
            for (ChainedRow row : rows) {
                statement.setLong(1, row.sequence());
                statement.setString(2, row.kind());
                statement.setString(3, row.entryId());
                statement.setString(4, row.recordedAt());
                statement.setString(5, row.body());
                statement.setString(6, row.previousHash());
                statement.setString(7, row.hash());
                statement.executeUpdate();
            }
        }
    }
}
