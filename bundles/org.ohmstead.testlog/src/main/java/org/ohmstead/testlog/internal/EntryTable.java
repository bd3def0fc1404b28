// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.ohmstead.testlog.EntryKind;

/** The statements on a log's table. */
public final class EntryTable {
    private static final String SELECT =
            "SELECT seq, kind, entry_id, recorded_at, body, previous_hash, hash FROM entry ";

    /** Takes one row after the other. */
    @FunctionalInterface
    interface RowConsumer {
        void accept(StoredRow row);
    }

    private final Connection connection;

    /** Works on an open log. */
    public EntryTable(Connection connection) {
        this.connection = connection;
    }

    /** Adds an entry at the end of the chain. The caller holds the transaction, which keeps everybody else from adding. */
    public StoredRow insert(EntryKind kind, String recordedAt, String body) throws SQLException {
        long sequence = lastSequence() + 1;
        StoredRow row = StoredRow.chained(sequence, kind.word(), nextId(kind), recordedAt, body, headHash());
        try (PreparedStatement statement = connection.prepareStatement(
                "INSERT INTO entry (seq, kind, entry_id, recorded_at, body, previous_hash, hash)"
                        + " VALUES (?, ?, ?, ?, ?, ?, ?)")) {
            statement.setLong(1, row.sequence());
            statement.setString(2, row.kind());
            statement.setString(3, row.entryId());
            statement.setString(4, row.recordedAt());
            statement.setString(5, row.body());
            statement.setString(6, row.previousHash());
            statement.setString(7, row.hash());
            statement.executeUpdate();
        }
        return row;
    }

    private String nextId(EntryKind kind) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement("SELECT entry_id FROM entry WHERE kind = ? ORDER BY seq DESC LIMIT 1")) {
            statement.setString(1, kind.word());
            try (ResultSet result = statement.executeQuery()) {
                long last = result.next() ? numberOf(result.getString(1)) : 0;
                return String.format(Locale.ROOT, "%c%04d", kind.idPrefix(), last + 1);
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
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery("SELECT hash FROM entry ORDER BY seq DESC LIMIT 1")) {
            return result.next() ? result.getString(1) : StoredRow.FIRST_PREVIOUS_HASH;
        }
    }

    /** Returns the entry with an id. */
    public Optional<StoredRow> byId(String id) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(SELECT + "WHERE entry_id = ?")) {
            statement.setString(1, id);
            return rows(statement).stream().findFirst();
        }
    }

    /** Returns all entries of a kind, in order. */
    public List<StoredRow> ofKind(EntryKind kind) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(SELECT + "WHERE kind = ? ORDER BY seq")) {
            statement.setString(1, kind.word());
            return rows(statement);
        }
    }

    /** Returns at most some of the entries behind a sequence number, up to another, in order. */
    public List<StoredRow> between(long after, long last, int most) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement(SELECT + "WHERE seq > ? AND seq <= ? ORDER BY seq LIMIT ?")) {
            statement.setLong(1, after);
            statement.setLong(2, last);
            statement.setInt(3, most);
            return rows(statement);
        }
    }

    private static List<StoredRow> rows(PreparedStatement statement) throws SQLException {
        List<StoredRow> rows = new ArrayList<>();
        try (ResultSet result = statement.executeQuery()) {
            while (result.next()) {
                rows.add(row(result));
            }
        }
        return rows;
    }

    /** Hands over all entries in order, as of one moment. */
    void forEach(RowConsumer consumer) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(SELECT + "ORDER BY seq")) {
            while (result.next()) {
                consumer.accept(row(result));
            }
        }
    }

    private static StoredRow row(ResultSet result) throws SQLException {
        return new StoredRow(
                result.getLong(1),
                text(result, 2),
                text(result, 3),
                text(result, 4),
                text(result, 5),
                text(result, 6),
                text(result, 7));
    }

    private static String text(ResultSet result, int column) throws SQLException {
        return Objects.requireNonNullElse(result.getString(column), "");
    }

    /** Returns the triggers of the file, by name. */
    Map<String, String> triggers() throws SQLException {
        Map<String, String> triggers = new TreeMap<>();
        try (Statement statement = connection.createStatement();
                ResultSet result =
                        statement.executeQuery("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")) {
            while (result.next()) {
                triggers.put(text(result, 1), text(result, 2));
            }
        }
        return triggers;
    }

    /** Returns what the database's own check of its file finds, at most some lines. */
    List<String> damages(int most) throws SQLException {
        List<String> damages = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery("PRAGMA integrity_check(" + most + ")")) {
            while (result.next()) {
                if (!"ok".equals(result.getString(1))) {
                    damages.add(text(result, 1));
                }
            }
        }
        return damages;
    }
}
