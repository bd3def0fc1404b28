// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import org.ohmstead.testlog.TestLogException;

/**
 * Changes that are made all or not at all. The statements are SQLite's own: the driver's {@code commit()} would at once begin the next
 * transaction, and its failure would look like one of the changes that are already made.
 */
public final class Transaction {
    /** Changes to be made. */
    @FunctionalInterface
    public interface Work<T> {
        /** Makes them. */
        T run() throws SQLException, TestLogException;
    }

    private Transaction() {}

    /** Makes changes while nobody else can make any; what this returns is on the disk. */
    public static <T> T run(Connection connection, Work<T> work) throws SQLException, TestLogException {
        execute(connection, "BEGIN IMMEDIATE");
        try {
            T result = work.run();
            execute(connection, "COMMIT");
            return result;
        } catch (SQLException | TestLogException | IllegalArgumentException | IllegalStateException failure) {
            rollBack(connection, failure);
            throw failure;
        }
    }

    private static void rollBack(Connection connection, Exception reason) {
        try {
            execute(connection, "ROLLBACK");
        } catch (SQLException alreadyOver) {
            // After some failures SQLite has rolled back by itself.
            reason.addSuppressed(alreadyOver);
        }
    }

    private static void execute(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.executeUpdate(sql);
        }
    }
}
