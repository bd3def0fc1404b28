// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared.internal;

import java.sql.Connection;
import java.sql.SQLException;
import org.ohmstead.testlog.shared.SharedLabException;

/** What is done all or not at all. */
public final class LabTransaction {
    /** What is to be done. */
    @FunctionalInterface
    public interface Work<T> {
        /** Does it. */
        T run() throws SQLException, SharedLabException;
    }

    private LabTransaction() {}

    /** Does something; when this returns, the server has confirmed that it is on its disk. */
    public static <T> T run(Connection connection, Work<T> work) throws SQLException, SharedLabException {
        boolean done = false;
        try {
            T result = work.run();
            connection.commit();
            done = true;
            return result;
        } catch (SQLException | SharedLabException failure) {
            rollBack(connection, failure);
            done = true;
            throw failure;
        } finally {
            if (!done) {
                connection.rollback();
            }
        }
    }

    private static void rollBack(Connection connection, Exception reason) {
        try {
            connection.rollback();
        } catch (SQLException cut) {
            // The server rolls back by itself when the connection is gone.
            reason.addSuppressed(cut);
        }
    }
}
