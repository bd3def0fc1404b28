// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.ohmstead.testlog.TestLogException;

/**
 * The database's own check of its file. That of a large one takes about as long as reading its entries, so that it goes on beside that,
 * with a connection of its own.
 */
final class FileCheck implements AutoCloseable {
    private static final int MOST_DAMAGES = 20;
    private static final long LARGE_BYTES = 1 << 25;
    private static final int BUSY_SECONDS = 20;

    private final Statement statement;
    private final Optional<Connection> own;
    private final FutureTask<List<String>> check = new FutureTask<>(this::check);
    private boolean begun;

    private FileCheck(Statement statement, Optional<Connection> own) {
        this.statement = statement;
        this.own = own;
    }

    /** Begins to check the file of a large log; that of a small one is checked when its damages are asked for. */
    static FileCheck of(Path file, Connection connection) throws SQLException {
        FileCheck made = null;
        if (file.toFile().length() > LARGE_BYTES) {
            made = beside(file);
        }
        return made == null ? new FileCheck(connection.createStatement(), Optional.empty()) : made;
    }

    private static FileCheck beside(Path file) throws SQLException {
        Connection connection = another(file);
        if (connection == null) {
            return null;
        }
        FileCheck made = new FileCheck(connection.createStatement(), Optional.of(connection));
        made.begun = true;
        Thread thread = new Thread(made.check, "log file check");
        thread.setDaemon(true);
        thread.start();
        return made;
    }

    private static Connection another(Path file) {
        try {
            return LogDatabase.openReadOnly(file, BUSY_SECONDS);
        } catch (TestLogException onlyOne) {
            // Then the check is made with the connection that there is.
            return null;
        }
    }

    private List<String> check() throws SQLException {
        List<String> damages = new ArrayList<>();
        try (ResultSet result = statement.executeQuery("PRAGMA integrity_check(" + MOST_DAMAGES + ")")) {
            while (result.next()) {
                if (!"ok".equals(result.getString(1))) {
                    damages.add(RowColumns.text(result, 1));
                }
            }
        }
        return damages;
    }

    /** Returns what is wrong, at most some lines. */
    List<String> damages() throws SQLException, TestLogException {
        if (!begun) {
            begun = true;
            check.run();
        }
        try {
            return check.get();
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new TestLogException(
                    "The check of the log was stopped before its end. Verify the log again.", stopped);
        } catch (ExecutionException failure) {
            if (failure.getCause() instanceof SQLException cause) {
                throw cause;
            }
            throw new IllegalStateException("the file could not be checked", failure.getCause());
        }
    }

    /** Stops the check when it still goes on. */
    @Override
    public void close() throws SQLException {
        if (begun && !check.isDone()) {
            statement.cancel();
            awaitEnd();
        }
        statement.close();
        if (own.isPresent()) {
            own.get().close();
        }
    }

    private void awaitEnd() {
        boolean interrupted = false;
        boolean ended = false;
        while (!ended) {
            try {
                check.get();
                ended = true;
            } catch (InterruptedException again) {
                interrupted = true;
            } catch (ExecutionException cancelled) {
                ended = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
