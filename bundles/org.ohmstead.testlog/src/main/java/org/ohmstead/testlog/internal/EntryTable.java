// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.chain.ChainedRow;

/** The statements on the table of a log's own entries. */
public final class EntryTable implements AutoCloseable {
    private static final String SELECT = "SELECT " + RowColumns.NAMES + " FROM entry ";
    private static final System.Logger LOGGER = System.getLogger(EntryTable.class.getName());
    private static final long UNKNOWN = -1;
    private static final int LEAST_DIGITS = 4;

    private final Connection connection;
    private final Map<EntryKind, Long> lastNumbers = new EnumMap<>(EntryKind.class);
    private PreparedStatement insertion;
    private PreparedStatement versionQuery;
    private long dataVersion = UNKNOWN;
    private long tailSequence;
    private String tailHash = ChainedRow.FIRST_PREVIOUS_HASH;
    private String tailTime = "";
    private Optional<String> clockSaid = Optional.empty();

    /** Works on an open log. */
    public EntryTable(Connection connection) {
        this.connection = connection;
    }

    /** Adds an entry at the end of the chain. The caller holds the transaction, which keeps everybody else from adding. */
    public ChainedRow insert(EntryKind kind, String recordedAt, String body) throws SQLException {
        lookAtTail();
        return insertBehindTail(kind, recordedAt, body);
    }

    /**
     * Adds an entry at the end of the chain by one statement, which is a transaction of its own and takes less time than one that is
     * begun and ended. Where the end of the chain is thought to be is only a guess, as somebody else may have added something since;
     * then the trigger of the file refuses the entry.
     *
     * @return the row, or empty when the end of the chain is not where it was thought to be; nothing was added then
     */
    public Optional<ChainedRow> insertAtOnce(EntryKind kind, String recordedAt, String body) throws SQLException {
        if (dataVersion == UNKNOWN || !lastNumbers.containsKey(kind)) {
            return Optional.empty();
        }
        try {
            return Optional.of(insertBehindTail(kind, recordedAt, body));
        } catch (SQLException refused) {
            if (LogFailures.meansConstraint(refused)) {
                forgetTail();
                return Optional.empty();
            }
            throw refused;
        }
    }

    private ChainedRow insertBehindTail(EntryKind kind, String recordedAt, String body) throws SQLException {
        long number = lastNumber(kind) + 1;
        String digits = Long.toString(number);
        String id = kind.idPrefix() + "0".repeat(Math.max(0, LEAST_DIGITS - digits.length())) + digits;
        ChainedRow row = ChainedRow.chained(tailSequence + 1, kind.word(), id, recordedAt, body, tailHash);
        if (insertion == null) {
            insertion = connection.prepareStatement(
                    "INSERT INTO entry (" + RowColumns.NAMES + ") VALUES (?, ?, ?, ?, ?, ?, ?)");
        }
        RowColumns.set(insertion, 1, row);
        insertion.executeUpdate();
        if (recordedAt.compareTo(tailTime) < 0 && ClockSteps.wentBack(tailTime, recordedAt)) {
            clockSaid = Optional.of(ClockSteps.said(tailTime, id, recordedAt));
        }
        tailTime = recordedAt;
        tailSequence = row.sequence();
        tailHash = row.hash();
        lastNumbers.put(kind, number);
        return row;
    }

    /** Returns, once, what to tell of the computer's clock since an entry that was added says an earlier time than the one ahead of it. */
    public Optional<String> clockSaid() {
        Optional<String> said = clockSaid;
        clockSaid = Optional.empty();
        return said;
    }

    /** Forgets what is known of the end of the chain, since what was added may have been taken back. */
    public void forgetTail() {
        dataVersion = UNKNOWN;
        clockSaid = Optional.empty();
        // The driver gives up a statement that failed, such as on a full disk.
        closeQuietly(insertion);
        closeQuietly(versionQuery);
        insertion = null;
        versionQuery = null;
    }

    static void closeQuietly(Statement statement) {
        try {
            if (statement != null) {
                statement.close();
            }
        } catch (SQLException alreadyGone) {
            LOGGER.log(System.Logger.Level.DEBUG, "A statement that failed could not be closed.", alreadyGone);
        }
    }

    /** What is known of the end of the chain holds until another connection changes the file, which SQLite counts. */
    private void lookAtTail() throws SQLException {
        if (versionQuery == null) {
            versionQuery = connection.prepareStatement("PRAGMA data_version");
        }
        long version;
        try (ResultSet result = versionQuery.executeQuery()) {
            version = result.getLong(1);
        }
        if (version != dataVersion) {
            lastNumbers.clear();
            tailSequence = lastSequence();
            tailHash = headHash();
            tailTime = lastTime();
            dataVersion = version;
        }
    }

    private long lastNumber(EntryKind kind) throws SQLException {
        Long known = lastNumbers.get(kind);
        if (known != null) {
            return known;
        }
        try (PreparedStatement statement =
                connection.prepareStatement("SELECT entry_id FROM entry WHERE kind = ? ORDER BY seq DESC LIMIT 1")) {
            statement.setString(1, kind.word());
            try (ResultSet result = statement.executeQuery()) {
                return result.next() ? numberOf(result.getString(1)) : 0;
            }
        }
    }

    private static long numberOf(String entryId) throws SQLException {
        if (!entryId.matches("[A-Z][0-9]{1,15}")) {
            throw new SQLException("the id \"" + entryId + "\" of the last entry was changed");
        }
        return Long.parseLong(entryId.substring(1));
    }

    /** Returns the sequence number of the last entry, 0 when there is none. */
    public long lastSequence() throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery("SELECT coalesce(max(seq), 0) FROM entry")) {
            return result.getLong(1);
        }
    }

    /** Returns the hash of the last entry. */
    public String headHash() throws SQLException {
        return hash("SELECT hash FROM entry ORDER BY seq DESC LIMIT 1");
    }

    private String lastTime() throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery("SELECT recorded_at FROM entry ORDER BY seq DESC LIMIT 1")) {
            return result.next() ? RowColumns.text(result, 1) : "";
        }
    }

    /** Returns the hash of the first entry. */
    public String firstHash() throws SQLException {
        return hash("SELECT hash FROM entry ORDER BY seq LIMIT 1");
    }

    private String hash(String query) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(query)) {
            return result.next() ? RowColumns.text(result, 1) : ChainedRow.FIRST_PREVIOUS_HASH;
        }
    }

    /** Returns the entry with an id. */
    public Optional<ChainedRow> byId(String id) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(SELECT + "WHERE entry_id = ?")) {
            statement.setString(1, id);
            return RowColumns.rows(statement).stream().findFirst();
        }
    }

    /** Returns the entries of a kind behind a sequence number, in order. */
    public List<ChainedRow> ofKind(EntryKind kind, long after) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement(SELECT + "WHERE kind = ? AND seq > ? ORDER BY seq")) {
            statement.setString(1, kind.word());
            statement.setLong(2, after);
            return RowColumns.rows(statement);
        }
    }

    /** Returns at most some of the entries behind a sequence number, up to another, in order. */
    public List<ChainedRow> between(long after, long last, int most) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement(SELECT + "WHERE seq > ? AND seq <= ? ORDER BY seq LIMIT ?")) {
            statement.setLong(1, after);
            statement.setLong(2, last);
            statement.setInt(3, most);
            return RowColumns.rows(statement);
        }
    }

    /** Hands over all entries in order, as of one moment. */
    void forEachRaw(RowColumns.RawConsumer consumer) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery("SELECT " + RowColumns.RAW + " FROM entry ORDER BY seq")) {
            RowColumns.forEachRaw(result, consumer);
        }
    }

    /** Returns the version of the file's schema. */
    int schemaVersion() throws SQLException {
        return LogSchema.number(connection, "PRAGMA user_version");
    }

    /** Returns the triggers of the file, by name. */
    Map<String, String> triggers() throws SQLException {
        Map<String, String> triggers = new TreeMap<>();
        try (Statement statement = connection.createStatement();
                ResultSet result =
                        statement.executeQuery("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")) {
            while (result.next()) {
                triggers.put(RowColumns.text(result, 1), RowColumns.text(result, 2));
            }
        }
        return triggers;
    }

    /** Begins the database's own check of its file, with the lists of entries or without. */
    FileCheck fileCheck(Path file, boolean withLists) throws SQLException {
        return FileCheck.isLarge(file)
                ? FileCheck.beside(file, connection, withLists)
                : FileCheck.later(file, connection);
    }

    /** Returns whether the lists of entries are those that {@link ListCheck} knows. */
    boolean hasUsualLists() throws SQLException {
        return ListCheck.suits(connection);
    }

    /** Returns what is wrong with the lists of entries, or empty when nothing is. */
    Optional<String> listFault(Path file, ListCheck lists) throws SQLException, TestLogException {
        return lists.fault(file, connection);
    }

    @Override
    public void close() throws SQLException {
        if (insertion != null) {
            insertion.close();
        }
        if (versionQuery != null) {
            versionQuery.close();
        }
    }
}
