// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * The furthest end of a log's own chain that the index beside it has seen.
 *
 * @param chain hash of the chain's first entry
 * @param sequence number of the last entry then
 * @param hash its hash
 */
public record Witness(String chain, long sequence, String hash) {
    /** Name of the index beside a log. */
    public static final String INDEX_NAME = "log-index.db";

    /** The table that the index keeps it in. */
    public static final String TABLE = "CREATE TABLE IF NOT EXISTS witness (chain TEXT NOT NULL PRIMARY KEY,"
            + " seq INTEGER NOT NULL, hash TEXT NOT NULL) STRICT";

    private static final String QUERY = "SELECT chain, seq, hash FROM witness";
    private static final int BUSY_MILLIS = 2000;

    private static final System.Logger LOGGER = System.getLogger(Witness.class.getName());

    /** Returns the index that lies beside a log. */
    public static Path indexBeside(Path logFile) {
        return logFile.resolveSibling(INDEX_NAME);
    }

    /** Returns what the index beside a log has seen, or empty when there is no index, or none that can be read. */
    public static Optional<Witness> beside(Path logFile) {
        return in(indexBeside(logFile));
    }

    /** Returns what the index in a file has seen, or empty when there is none that can be read. */
    public static Optional<Witness> in(Path index) {
        if (!Files.isRegularFile(index)) {
            return Optional.empty();
        }
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        config.setBusyTimeout(BUSY_MILLIS);
        SQLiteDataSource source = new SQLiteDataSource(config);
        boolean fixed = !Files.isWritable(index.toAbsolutePath().getParent());
        source.setUrl("jdbc:sqlite:" + index.toUri().toASCIIString() + (fixed ? "?immutable=1" : ""));
        try (Connection connection = source.getConnection()) {
            return read(connection);
        } catch (SQLException damaged) {
            // The index can be made anew from the log at any time, so that its faults are none of the log's.
            LOGGER.log(System.Logger.Level.DEBUG, "The index " + index + " tells nothing.", damaged);
            return Optional.empty();
        }
    }

    /** Returns what an open index has seen. */
    public static Optional<Witness> read(Connection index) throws SQLException {
        try (Statement statement = index.createStatement();
                ResultSet result = statement.executeQuery(QUERY)) {
            return result.next()
                    ? Optional.of(new Witness(result.getString(1), result.getLong(2), result.getString(3)))
                    : Optional.empty();
        }
    }
}
