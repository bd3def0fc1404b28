// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.ohmstead.testlog.internal.LogDatabase;
import org.ohmstead.testlog.internal.LogFailures;
import org.ohmstead.testlog.internal.Witness;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/** The file of an index: blocks of bytes in a database, so that several processes may use it and a change is made whole or not at all. */
final class IndexFile implements AutoCloseable {
    /** Marks the file as an index of Ohmstead: the letters OHMI. */
    static final int APPLICATION_ID = 0x4F484D49;

    static final int VERSION = 2;

    private static final int BUSY_MILLIS = 20_000;
    private static final long RETRY_NANOS = TimeUnit.MILLISECONDS.toNanos(5);
    private static final int CACHE_KIBIBYTES = 16_384;

    /** Blocks are large, and a large page takes one reading where small ones take many. */
    private static final int PAGE_BYTES = 32_768;

    private static final int SEGMENT_BITS = 32;
    private static final long CONTENT_ID = -1;

    /**
     * How far a chain is indexed.
     *
     * @param sequence number of the last entry
     * @param hash its hash
     */
    record Reached(long sequence, String hash) {}

    /**
     * What the index holds.
     *
     * @param making which making of it; another one has nothing in common with this
     * @param rows how many entries
     * @param change counts the changes
     * @param reached how far each chain is indexed, by the hash of its first entry
     */
    record Content(long making, int rows, long change, Map<String, Reached> reached) {
        Content {
            reached = Map.copyOf(reached);
        }
    }

    /** Makes something of the bytes of a block; on any thread. */
    interface Decoder<T> {
        T decoded(byte[] block) throws BlockCode.DamagedException;
    }

    /** Takes what one block after the other holds. */
    interface BlockTaker<T> {
        void take(int segment, T decoded) throws BlockCode.DamagedException;
    }

    /** A block on its way: its place, and what becomes of it on another thread. */
    private record Coming<T>(int segment, ForkJoinTask<T> decoded) {}

    private final Connection connection;
    private PreparedStatement blockQuery;
    private PreparedStatement contentQuery;

    private IndexFile(Connection connection) {
        this.connection = connection;
    }

    /** Opens the index in a file, or makes it when there is none; in memory when there is no file. */
    static IndexFile open(Optional<Path> file) throws SQLException, BlockCode.DamagedException {
        SQLiteConfig config = new SQLiteConfig();
        config.setBusyTimeout(BUSY_MILLIS);
        config.setSynchronous(SQLiteConfig.SynchronousMode.OFF);
        config.setCacheSize(-CACHE_KIBIBYTES);
        config.setPageSize(PAGE_BYTES);
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl(
                "jdbc:sqlite:" + file.map(path -> path.toUri().toASCIIString()).orElse(":memory:"));
        long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(BUSY_MILLIS);
        while (true) {
            try {
                return prepared(source);
            } catch (SQLException busy) {
                if (!LogFailures.meansBusy(busy) || System.nanoTime() > end) {
                    throw busy;
                }
                // Of two that make the file at the same moment the database refuses one at once, without waiting for
                // the other.
                LockSupport.parkNanos(RETRY_NANOS);
            }
        }
    }

    private static IndexFile prepared(SQLiteDataSource source) throws SQLException, BlockCode.DamagedException {
        boolean ready = false;
        IndexFile index = new IndexFile(source.getConnection());
        try {
            index.prepare();
            ready = true;
            return index;
        } finally {
            if (!ready) {
                index.close();
            }
        }
    }

    private void prepare() throws SQLException, BlockCode.DamagedException {
        LogDatabase.distrust(connection);
        // As of one moment: somebody else may just be making the file, and half of what that changes would look like
        // damage.
        execute("BEGIN");
        int application = number("PRAGMA application_id");
        int version = number("PRAGMA user_version");
        boolean isNew = application == 0 && version == 0 && number("SELECT count(*) FROM sqlite_schema") == 0;
        commit();
        boolean feigned = number("SELECT count(*) FROM sqlite_schema WHERE type = 'view' OR type = 'trigger'"
                        + " OR sql LIKE 'CREATE VIRTUAL%'")
                > 0;
        if (!isNew && (application != APPLICATION_ID || version != VERSION || feigned)) {
            throw new BlockCode.DamagedException("it is of another version or of another program");
        }
        if (isNew) {
            make();
        }
    }

    private void make() throws SQLException {
        execute("PRAGMA journal_mode = WAL");
        begin();
        execute("CREATE TABLE IF NOT EXISTS content (single INTEGER PRIMARY KEY CHECK (single = 1),"
                + " making INTEGER NOT NULL, data BLOB NOT NULL) STRICT");
        execute("CREATE TABLE IF NOT EXISTS block (id INTEGER PRIMARY KEY, data BLOB NOT NULL) STRICT");
        execute(Witness.TABLE);
        if (number("SELECT count(*) FROM content") == 0) {
            set(new Content(new SecureRandom().nextLong(), 0, 0, Map.of()));
        }
        execute("PRAGMA application_id = " + APPLICATION_ID);
        execute("PRAGMA user_version = " + VERSION);
        commit();
    }

    /** Deletes a file that is no use. */
    static void delete(Path file) throws IOException {
        for (String ending : new String[] {"-wal", "-shm", ""}) {
            Files.deleteIfExists(file.resolveSibling(file.getFileName() + ending));
        }
    }

    private int number(String query) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(query)) {
            return result.getInt(1);
        }
    }

    private void execute(String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    void begin() throws SQLException {
        execute("BEGIN IMMEDIATE");
    }

    void commit() throws SQLException {
        execute("COMMIT");
    }

    void rollBack() throws SQLException {
        execute("ROLLBACK");
    }

    Content content() throws SQLException, BlockCode.DamagedException {
        if (contentQuery == null) {
            contentQuery = connection.prepareStatement("SELECT making, data FROM content");
        }
        try (ResultSet result = contentQuery.executeQuery()) {
            if (!result.next()) {
                throw new BlockCode.DamagedException("its content is missing");
            }
            long making = result.getLong(1);
            return content(making, BlockCode.words(BlockCode.opened(bytes(result, 2), making, CONTENT_ID)));
        }
    }

    private static Content content(long making, Words texts) throws BlockCode.DamagedException {
        try {
            Map<String, Reached> reached = new TreeMap<>();
            for (int at = 2; at < texts.size(); at += 3) {
                reached.put(texts.text(at), new Reached(Long.parseLong(texts.text(at + 1)), texts.text(at + 2)));
            }
            return new Content(making, Integer.parseInt(texts.text(0)), Long.parseLong(texts.text(1)), reached);
        } catch (NumberFormatException | IndexOutOfBoundsException wrong) {
            throw new BlockCode.DamagedException("its content is not understood", wrong);
        }
    }

    /** Returns the content with other rows, in the file; the caller holds the transaction. */
    Content grown(Content before, int rows, Map<String, Reached> reached) throws SQLException {
        Content after = new Content(before.making(), rows, before.change() + 1, reached);
        set(after);
        return after;
    }

    private void set(Content content) throws SQLException {
        List<String> texts =
                new ArrayList<>(List.of(Integer.toString(content.rows()), Long.toString(content.change())));
        content.reached().forEach((chain, to) -> texts.addAll(List.of(chain, Long.toString(to.sequence()), to.hash())));
        try (PreparedStatement statement =
                connection.prepareStatement("INSERT OR REPLACE INTO content (single, making, data) VALUES (1, ?, ?)")) {
            statement.setLong(1, content.making());
            statement.setBytes(2, BlockCode.seal(BlockCode.words(texts), content.making(), CONTENT_ID));
            statement.executeUpdate();
        }
    }

    /** Throws all blocks away, but not what was witnessed; the caller holds the transaction. */
    void clear() throws SQLException {
        execute("DELETE FROM block");
        set(new Content(new SecureRandom().nextLong(), 0, 0, Map.of()));
    }

    private static long id(int slot, int segment) {
        return (long) slot << SEGMENT_BITS | segment;
    }

    void write(Content content, int slot, int segment, byte[] block) throws SQLException {
        long id = id(slot, segment);
        try (PreparedStatement statement =
                connection.prepareStatement("INSERT OR REPLACE INTO block (id, data) VALUES (?, ?)")) {
            statement.setLong(1, id);
            statement.setBytes(2, BlockCode.seal(block, content.making(), id));
            statement.executeUpdate();
        }
    }

    Optional<byte[]> read(Content content, int slot, int segment) throws SQLException, BlockCode.DamagedException {
        if (blockQuery == null) {
            blockQuery = connection.prepareStatement("SELECT data FROM block WHERE id = ?");
        }
        long id = id(slot, segment);
        blockQuery.setLong(1, id);
        try (ResultSet result = blockQuery.executeQuery()) {
            return result.next()
                    ? Optional.of(BlockCode.opened(bytes(result, 1), content.making(), id))
                    : Optional.empty();
        }
    }

    private static byte[] bytes(ResultSet result, int column) throws SQLException {
        return Objects.requireNonNullElse(result.getBytes(column), new byte[0]);
    }

    /** Hands over what the blocks of a slot hold, in order. They are checked and decoded on other threads while the next are read. */
    <T> void readAll(Content content, int slot, int firstSegment, Decoder<T> decoder, BlockTaker<T> taker)
            throws SQLException, BlockCode.DamagedException {
        List<Coming<T>> coming = new ArrayList<>();
        try (PreparedStatement statement =
                connection.prepareStatement("SELECT id, data FROM block WHERE id BETWEEN ? AND ? ORDER BY id")) {
            statement.setLong(1, id(slot, firstSegment));
            statement.setLong(2, id(slot + 1, 0) - 1);
            try (ResultSet result = statement.executeQuery()) {
                while (result.next()) {
                    long id = result.getLong(1);
                    byte[] block = bytes(result, 2);
                    coming.add(new Coming<>(
                            (int) id,
                            ForkJoinPool.commonPool()
                                    .submit(() -> decoder.decoded(BlockCode.opened(block, content.making(), id)))));
                }
            }
        }
        for (Coming<T> one : coming) {
            taker.take(one.segment(), come(one.decoded()));
        }
    }

    private static <T> T come(ForkJoinTask<T> task) throws BlockCode.DamagedException {
        task.quietlyJoin();
        if (task.isCompletedNormally()) {
            return task.getRawResult();
        }
        Throwable cause = task.getException();
        while (cause != null && !(cause instanceof BlockCode.DamagedException)) {
            cause = cause.getCause();
        }
        if (cause instanceof BlockCode.DamagedException damaged) {
            throw damaged;
        }
        throw new IllegalStateException("a block was not decoded", task.getException());
    }

    Optional<Witness> witness() throws SQLException {
        return Witness.read(connection);
    }

    /** Remembers the furthest end that was seen of a log's own chain, instead of what was remembered; the caller holds the transaction. */
    void setWitness(Witness witness) throws SQLException {
        execute("DELETE FROM witness");
        try (PreparedStatement statement =
                connection.prepareStatement("INSERT INTO witness (chain, seq, hash) VALUES (?, ?, ?)")) {
            statement.setString(1, witness.chain());
            statement.setLong(2, witness.sequence());
            statement.setString(3, witness.hash());
            statement.executeUpdate();
        }
    }

    @Override
    public void close() throws SQLException {
        if (blockQuery != null) {
            blockQuery.close();
        }
        if (contentQuery != null) {
            contentQuery.close();
        }
        connection.close();
    }
}
