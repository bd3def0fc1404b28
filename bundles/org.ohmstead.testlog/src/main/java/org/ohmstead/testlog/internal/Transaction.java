// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import org.ohmstead.testlog.TestLogException;

/**
 * Changes that are made all or not at all. The statements are SQLite's own: the driver's {@code commit()} would at once begin the next
 * transaction, and its failure would look like one of the changes that are already made.
 */
public final class Transaction implements AutoCloseable {
    /** Changes to be made. */
    @FunctionalInterface
    public interface Work<T> {
        /** Makes them. */
        T run() throws SQLException, TestLogException;
    }

    private final Connection connection;
    private PreparedStatement beginning;
    private PreparedStatement end;

    /** Makes changes through a connection; its statements are kept, since making them takes as long as carrying them out. */
    public Transaction(Connection connection) {
        this.connection = connection;
    }

    /** Makes changes while nobody else can make any; what this returns is on the disk. */
    public static <T> T once(Connection connection, Work<T> work) throws SQLException, TestLogException {
        try (Transaction transaction = new Transaction(connection)) {
            return transaction.run(work);
        }
    }

    /** Makes changes while nobody else can make any; what this returns is on the disk. */
    public <T> T run(Work<T> work) throws SQLException, TestLogException {
        boolean done = false;
        try {
            if (beginning == null) {
                beginning = connection.prepareStatement("BEGIN IMMEDIATE");
                end = connection.prepareStatement("COMMIT");
            }
            beginning.executeUpdate();
            T result = changed(work);
            done = true;
            return result;
        } finally {
            if (!done) {
                forget();
            }
        }
    }

    private <T> T changed(Work<T> work) throws SQLException, TestLogException {
        try {
            T result = work.run();
            end.executeUpdate();
            return result;
        } catch (SQLException | TestLogException | IllegalArgumentException | IllegalStateException failure) {
            rollBack(failure);
            throw failure;
        }
    }

    /** The driver gives up a statement that failed, such as on a full disk; with room again, others must take their place. */
    private void forget() {
        EntryTable.closeQuietly(beginning);
        EntryTable.closeQuietly(end);
        beginning = null;
        end = null;
    }

    private void rollBack(Exception reason) {
        try (Statement statement = connection.createStatement()) {
            statement.executeUpdate("ROLLBACK");
        } catch (SQLException alreadyOver) {
            // After some failures SQLite has rolled back by itself.
            reason.addSuppressed(alreadyOver);
        }
    }

    @Override
    public void close() throws SQLException {
        if (beginning != null) {
            beginning.close();
        }
        if (end != null) {
            end.close();
        }
    }
}
