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
import java.util.Optional;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.chain.ChainedRow;

/** The statements on the tables of joined chains. A log of an older version has none, so that it has no joined chains either. */
public final class JoinedTable {
    private static final String SELECT = "SELECT " + RowColumns.NAMES + " FROM joined_entry ";
    private static final String CHAINS = "SELECT number, chain, label, name,"
            + " (SELECT max(seq) FROM joined_entry e WHERE e.number = c.number),"
            + " (SELECT hash FROM joined_entry e WHERE e.number = c.number ORDER BY seq DESC LIMIT 1),"
            + " (SELECT min(seq) FROM joined_entry e WHERE e.number = c.number)"
            + " FROM joined_chain c ORDER BY number";

    /**
     * A chain that was joined.
     *
     * @param number which of the joined ones it is
     * @param info the chain
     */
    public record Chain(long number, ChainInfo info) {}

    private final Connection connection;
    private boolean there;

    /** Works on an open log. */
    public JoinedTable(Connection connection) {
        this.connection = connection;
    }

    /** Once the tables are there they stay; another process may make them meanwhile. */
    private boolean there() throws SQLException {
        there = there || LogSchema.number(connection, "PRAGMA user_version") >= LogSchema.WITH_JOINED_CHAINS;
        return there;
    }

    /** Returns the joined chains, in the order they came. */
    public List<Chain> chains() throws SQLException {
        List<Chain> chains = new ArrayList<>();
        if (there()) {
            try (Statement statement = connection.createStatement();
                    ResultSet result = statement.executeQuery(CHAINS)) {
                while (result.next()) {
                    chains.add(new Chain(result.getLong(1), info(result)));
                }
            }
        }
        return chains;
    }

    private static ChainInfo info(ResultSet result) throws SQLException {
        String head = result.getString(6);
        long first = Math.max(result.getLong(7), 1);
        return new ChainInfo(
                RowColumns.text(result, 2),
                RowColumns.text(result, 3),
                RowColumns.text(result, 4),
                head == null ? 0 : result.getLong(5) - first + 1,
                head == null ? ChainedRow.FIRST_PREVIOUS_HASH : head,
                first);
    }

    /** Returns the joined chain with a label. */
    public Optional<Chain> chain(String label) throws SQLException {
        return chains().stream()
                .filter(chain -> chain.info().label().equals(label))
                .findFirst();
    }

    /** Returns at most some of the entries of a chain behind a number, up to another, in order. */
    public List<ChainedRow> between(long number, long after, long last, int most) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(
                SELECT + "WHERE number = ? AND seq > ? AND seq <= ? ORDER BY seq LIMIT ?")) {
            statement.setLong(1, number);
            statement.setLong(2, after);
            statement.setLong(3, last);
            statement.setInt(4, most);
            return RowColumns.rows(statement);
        }
    }

    /** Returns the entry of a chain with an id. */
    public Optional<ChainedRow> byId(long number, String id) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(SELECT + "WHERE number = ? AND entry_id = ?")) {
            statement.setLong(1, number);
            statement.setString(2, id);
            return RowColumns.rows(statement).stream().findFirst();
        }
    }

    /** Returns the entries of a kind of a chain behind a number, in order. */
    public List<ChainedRow> ofKind(long number, EntryKind kind, long after) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement(SELECT + "WHERE number = ? AND kind = ? AND seq > ? ORDER BY seq")) {
            statement.setLong(1, number);
            statement.setString(2, kind.word());
            statement.setLong(3, after);
            return RowColumns.rows(statement);
        }
    }

    /** Adds a chain; the caller holds the transaction. */
    public void insertChain(long number, String chain, String label, String name) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(
                "INSERT INTO joined_chain (number, chain, label, name) VALUES (?, ?, ?, ?)")) {
            statement.setLong(1, number);
            statement.setString(2, chain);
            statement.setString(3, label);
            statement.setString(4, name);
            statement.executeUpdate();
        }
    }

    /** Adds entries at the end of a chain, as they are; the caller holds the transaction. */
    public void insert(long number, List<ChainedRow> rows) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(
                "INSERT INTO joined_entry (number, " + RowColumns.NAMES + ") VALUES (?, ?, ?, ?, ?, ?, ?, ?)")) {
            for (ChainedRow row : rows) {
                statement.setLong(1, number);
                RowColumns.set(statement, 2, row);
                statement.executeUpdate();
            }
        }
    }

    /** Hands over all entries of a chain in order. */
    void forEachRaw(long number, RowColumns.RawConsumer consumer) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(
                "SELECT " + RowColumns.RAW + " FROM joined_entry WHERE number = ? ORDER BY seq")) {
            statement.setLong(1, number);
            try (ResultSet result = statement.executeQuery()) {
                RowColumns.forEachRaw(result, consumer);
            }
        }
    }
}
