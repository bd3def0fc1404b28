// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.ohmstead.testlog.TestLogException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/** Opens the file of a log, after having made sure that it is one. */
public final class LogDatabase {
    private static final byte[] FILE_MARK = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

    /** Of a new log; a reading takes more than SQLite's usual page has room for two of. */
    private static final int PAGE_BYTES = 8192;

    /**
     * How many pages wait beside the log until they are carried into it, 32 MB. Each entry is on the disk before; but to carry pages
     * over keeps the next entry waiting for some milliseconds, which SQLite's usual 1000 pages would do every 300 readings.
     */
    private static final int WAITING_PAGES = 4000;

    private static final long RETRY_NANOS = TimeUnit.MILLISECONDS.toNanos(5);

    /** A log is empty for a moment while another program makes it. */
    private static final long BEING_MADE_NANOS = TimeUnit.SECONDS.toNanos(1);

    private LogDatabase() {}

    /** Opens a log for adding; makes it when there is none. */
    public static Connection open(Path file, int busySeconds) throws TestLogException {
        Path folder = file.toAbsolutePath().getParent();
        if (!Files.isDirectory(folder)) {
            throw LogRefusals.of("open.noFolder", file, folder);
        }
        boolean writable = Files.isWritable(folder) && (!Files.exists(file) || Files.isWritable(file));
        if (!writable) {
            throw LogRefusals.because(new AccessDeniedException(file.toString()), "open.denied", file);
        }
        requireDatabase(file);
        return LogFailures.guard(file, LogFailures.OPEN, () -> patiently(file, busySeconds));
    }

    /**
     * When several open a new log at once, the change to write-ahead mode is refused to all but one without waiting, since each could
     * wait for the other; so whoever is refused begins again, for as long as waiting for a busy log is allowed.
     */
    private static Connection patiently(Path file, int busySeconds) throws SQLException, TestLogException {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(busySeconds);
        while (true) {
            try {
                return prepared(file, busySeconds);
            } catch (SQLException busy) {
                if (!LogFailures.meansBusy(busy) || System.nanoTime() > end) {
                    throw busy;
                }
                LockSupport.parkNanos(RETRY_NANOS);
            }
        }
    }

    private static Connection prepared(Path file, int busySeconds) throws SQLException, TestLogException {
        boolean ready = false;
        Connection connection = connect(file.toUri().toASCIIString(), config(busySeconds));
        try {
            distrust(connection);
            requireLog(file, connection, true);
            useWriteAheadLog(file, connection);
            execute(connection, "PRAGMA wal_autocheckpoint = " + WAITING_PAGES);
            LogSchema.migrate(connection, LogSchema.STEPS);
            ready = true;
            return connection;
        } finally {
            if (!ready) {
                connection.close();
            }
        }
    }

    /** Opens an existing log for reading. */
    public static Connection openReadOnly(Path file, int busySeconds) throws TestLogException {
        if (!Files.exists(file)) {
            throw LogRefusals.of("open.none", file);
        }
        requireDatabase(file);
        requireReadable(file);
        return LogFailures.guard(file, LogFailures.OPEN, () -> {
            SQLiteConfig config = config(busySeconds);
            config.setReadOnly(true);
            boolean ready = false;
            Connection connection = connect(file.toUri().toASCIIString() + immutability(file), config);
            try {
                distrust(connection);
                awaitBeginning(connection);
                requireLog(file, connection, false);
                ready = true;
                return connection;
            } finally {
                if (!ready) {
                    connection.close();
                }
            }
        });
    }

    /** Entries that a killed program left beside the log are taken in when it is opened, which takes the right to write. */
    private static void requireReadable(Path file) throws TestLogException {
        Path pending = file.resolveSibling(file.getFileName() + "-wal");
        Path index = file.resolveSibling(file.getFileName() + "-shm");
        Path folder = file.toAbsolutePath().getParent();
        if (Files.exists(pending) && !Files.exists(index) && !Files.isWritable(folder) && !isEmpty(pending)) {
            throw LogRefusals.because(
                    new AccessDeniedException(folder.toString()), "open.pending", file, pending.getFileName());
        }
    }

    private static boolean isEmpty(Path file) throws TestLogException {
        return LogFailures.guard(file, LogFailures.OPEN, () -> Files.size(file) == 0);
    }

    // Reading in write-ahead mode needs a small file beside the log. Where none can be made and nothing is pending,
    // nobody can be writing either, and the file can be taken as it is.
    private static String immutability(Path file) throws IOException {
        Path pending = file.resolveSibling(file.getFileName() + "-wal");
        boolean nothingPending = !Files.exists(pending) || Files.size(pending) == 0;
        boolean fixed =
                nothingPending && !Files.isWritable(file.toAbsolutePath().getParent());
        return fixed ? "?immutable=1" : "";
    }

    private static SQLiteConfig config(int busySeconds) {
        SQLiteConfig config = new SQLiteConfig();
        config.setBusyTimeout(busySeconds * 1000);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.enforceForeignKeys(true);
        config.setPageSize(PAGE_BYTES);
        return config;
    }

    private static Connection connect(String uri, SQLiteConfig config) throws SQLException {
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + uri);
        return source.getConnection();
    }

    /** Looks at the file itself, because SQLite would only notice after having begun to write. */
    private static void requireDatabase(Path file) throws TestLogException {
        if (!Files.exists(file)) {
            return;
        }
        if (!Files.isRegularFile(file)) {
            // A pipe would keep whoever opens it waiting for ever.
            throw LogRefusals.of("open.noLog", file);
        }
        byte[] start;
        try (InputStream in = Files.newInputStream(file)) {
            start = in.readNBytes(FILE_MARK.length);
        } catch (IOException failure) {
            throw LogRefusals.because(failure, "open.unread", file);
        }
        if (start.length > 0 && !Arrays.equals(start, FILE_MARK)) {
            throw LogRefusals.of("open.noLog", file);
        }
    }

    /** A log may come from a stranger: what its schema says must neither run what is unsafe nor lead the database astray. */
    public static void distrust(Connection connection) throws SQLException {
        execute(connection, "PRAGMA trusted_schema = OFF");
        execute(connection, "PRAGMA cell_size_check = ON");
    }

    private static void awaitBeginning(Connection connection) throws SQLException {
        long end = System.nanoTime() + BEING_MADE_NANOS;
        while (LogSchema.number(connection, "SELECT count(*) FROM sqlite_schema") == 0 && System.nanoTime() < end) {
            LockSupport.parkNanos(RETRY_NANOS);
        }
    }

    private static void requireLog(Path file, Connection connection, boolean mayBeNew)
            throws SQLException, TestLogException {
        // One reading transaction: between two, another process may have made the log.
        execute(connection, "BEGIN");
        int application = LogSchema.number(connection, "PRAGMA application_id");
        int version = LogSchema.number(connection, "PRAGMA user_version");
        int tables = LogSchema.number(connection, "SELECT count(*) FROM sqlite_schema");
        int feigned = LogSchema.number(connection, LogSchema.FEIGNED);
        execute(connection, "END");
        boolean isNew = application == 0 && version == 0 && tables == 0;
        if (isNew && mayBeNew) {
            return;
        }
        if (isNew) {
            throw LogRefusals.of("open.empty", file);
        }
        if (application != LogSchema.APPLICATION_ID) {
            throw LogRefusals.of("open.foreign", file);
        }
        if (feigned > 0) {
            throw LogRefusals.of("open.feigned", file);
        }
        int newest = LogSchema.newestVersion(LogSchema.STEPS);
        if (version > newest) {
            throw LogRefusals.of("open.newer", file, version, newest);
        }
    }

    private static void execute(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.executeUpdate(sql);
        }
    }

    private static void useWriteAheadLog(Path file, Connection connection) throws SQLException, TestLogException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery("PRAGMA journal_mode = WAL")) {
            String mode = result.getString(1);
            if (!"wal".equals(mode)) {
                throw LogRefusals.of("open.unsafe", file, mode);
            }
        }
    }
}
