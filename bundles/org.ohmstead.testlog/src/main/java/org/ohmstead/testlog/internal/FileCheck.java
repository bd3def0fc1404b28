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
import org.ohmstead.units.text.Messages;

/**
 * The database's own check of its file. That of a large one takes about as long as reading its entries, so that it goes on beside that,
 * with a connection of its own.
 */
final class FileCheck implements AutoCloseable {
    private static final Messages TEXTS = Messages.of(FileCheck.class);
    private static final int MOST_DAMAGES = 20;
    private static final long LARGE_BYTES = 1 << 25;
    private static final int BUSY_SECONDS = 20;

    private final Path file;
    private final Statement statement;
    private final Optional<Connection> own;
    private final boolean withLists;
    private final FutureTask<List<String>> check = new FutureTask<>(this::check);
    private boolean begun;

    private FileCheck(Path file, Statement statement, Optional<Connection> own, boolean withLists) {
        this.file = file;
        this.statement = statement;
        this.own = own;
        this.withLists = withLists;
    }

    /** Returns whether a log is so large that its file is checked beside its entries. */
    static boolean isLarge(Path file) {
        return file.toFile().length() > LARGE_BYTES;
    }

    /** Prepares to check a file when its damages are asked for. */
    static FileCheck later(Path file, Connection connection) throws SQLException {
        return new FileCheck(file, connection.createStatement(), Optional.empty(), true);
    }

    /**
     * Begins to check the file of a log.
     *
     * @param withLists whether the lists that entries are found by are held against the entries
     */
    static FileCheck beside(Path file, Connection connection, boolean withLists) throws SQLException {
        Connection another = another(file);
        if (another == null) {
            return later(file, connection);
        }
        FileCheck made = new FileCheck(file, another.createStatement(), Optional.of(another), withLists);
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
        long lengthBefore = file.toFile().length();
        try (ResultSet result = statement.executeQuery(
                "PRAGMA " + (withLists ? "integrity_check" : "quick_check") + "(" + MOST_DAMAGES + ")")) {
            while (result.next()) {
                if (!"ok".equals(result.getString(1))) {
                    damages.add(RowColumns.text(result, 1));
                }
            }
        }
        // What is cut off within an empty page loses nothing, so that the database does not miss it. A page that
        // another program
        // adds just now may be seen half, but not before and after the check.
        if (lengthBefore == file.toFile().length()
                && lengthBefore % LogSchema.number(statement.getConnection(), "PRAGMA page_size") != 0) {
            damages.add(TEXTS.text("whole.page", Long.toString(lengthBefore)));
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
            throw new TestLogException(TEXTS.text("check.stopped"), stopped);
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
