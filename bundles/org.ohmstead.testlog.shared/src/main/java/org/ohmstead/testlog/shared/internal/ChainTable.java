// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared.internal;

import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.shared.ChainOrigin;
import org.ohmstead.testlog.shared.LabChain;

/** The statements on the tables of the shared log. */
public final class ChainTable {
    private static final int LETTERS = 26;

    private static final String CHAINS =
            """
            SELECT c.id, c.place, c.bench, c.project, c.amplifier, c.parent_hash, c.first_seq, c.created_at, c.created_by,
                coalesce(e.seq, c.first_seq - 1), coalesce(e.hash, c.parent_hash),
                CASE WHEN m.mark = 'closed' THEN m.reason END
            FROM ohmstead.chain c
            LEFT JOIN LATERAL (SELECT x.seq, x.hash FROM ohmstead.entry x WHERE x.chain = c.id
                ORDER BY x.seq DESC LIMIT 1) e ON true
            LEFT JOIN LATERAL (SELECT y.mark, y.reason FROM ohmstead.chain_mark y WHERE y.chain = c.id
                ORDER BY y.number DESC LIMIT 1) m ON true
            ORDER BY c.place""";

    private static final String ROWS =
            """
            SELECT seq, kind, entry_id, recorded_at, body, previous_hash, hash FROM ohmstead.entry
            WHERE chain = ? AND seq > ? ORDER BY seq LIMIT ?""";

    private static final String PLACE =
            """
            SELECT e.chain, h.hash, EXISTS (SELECT FROM ohmstead.entry n WHERE n.hash = ?)
            FROM ohmstead.entry e
            CROSS JOIN LATERAL (SELECT x.hash FROM ohmstead.entry x WHERE x.chain = e.chain
                ORDER BY x.seq DESC LIMIT 1) h
            WHERE e.hash = ?""";

    private static final String INSERT =
            """
            INSERT INTO ohmstead.entry (chain, seq, kind, entry_id, recorded_at, body, previous_hash, hash)
            SELECT ?, r.seq, r.kind, r.entry_id, r.recorded_at, r.body, r.previous_hash, r.hash
            FROM unnest(?::bigint[], ?::text[], ?::text[], ?::text[], ?::text[], ?::text[], ?::text[])
                AS r (seq, kind, entry_id, recorded_at, body, previous_hash, hash)
            ORDER BY r.seq""";

    private final Connection connection;

    /**
     * Where an entry stands.
     *
     * @param chain id of its chain
     * @param headHash hash of the chain's last entry
     * @param nextThere whether the entry that was asked about beside it is there too, in whatever chain
     */
    public record Place(String chain, String headHash, boolean nextThere) {}

    /** Works on an open connection. */
    public ChainTable(Connection connection) {
        this.connection = connection;
    }

    /** Returns all chains in the order of their labels. */
    public List<LabChain> chains() throws SQLException {
        List<LabChain> chains = new ArrayList<>();
        try (PreparedStatement statement = connection.prepareStatement(CHAINS);
                ResultSet result = statement.executeQuery()) {
            while (result.next()) {
                chains.add(chain(result));
            }
        }
        return chains;
    }

    private static LabChain chain(ResultSet result) throws SQLException {
        String bench = result.getString(3);
        long first = result.getLong(7);
        long last = result.getLong(10);
        return new LabChain(
                new ChainInfo(
                        result.getString(1),
                        label(result.getLong(2)),
                        bench,
                        Math.max(0, last - first + 1),
                        result.getString(11),
                        first),
                result.getString(6),
                new ChainOrigin(bench, result.getString(4), result.getString(5)),
                result.getObject(8, OffsetDateTime.class).toInstant(),
                result.getString(9),
                Optional.ofNullable(result.getString(12)));
    }

    /** Returns letters for a number, counted from 1: A to Z, AA to ZZ, and so on. */
    static String label(long number) {
        StringBuilder label = new StringBuilder();
        for (long left = number; left > 0; left = (left - 1) / LETTERS) {
            label.insert(0, (char) ('A' + (left - 1) % LETTERS));
        }
        return label.toString();
    }

    /** Returns some of the rows of a chain. */
    public List<ChainedRow> rows(String chain, long after, int most) throws SQLException {
        List<ChainedRow> rows = new ArrayList<>();
        try (PreparedStatement statement = connection.prepareStatement(ROWS)) {
            statement.setString(1, chain);
            statement.setLong(2, after);
            statement.setInt(3, most);
            try (ResultSet result = statement.executeQuery()) {
                while (result.next()) {
                    rows.add(new ChainedRow(
                            result.getLong(1),
                            result.getString(2),
                            result.getString(3),
                            result.getString(4),
                            result.getString(5),
                            result.getString(6),
                            result.getString(7)));
                }
            }
        }
        return rows;
    }

    /** Returns those of some hashes whose entries are there. */
    public Set<String> there(List<String> hashes) throws SQLException {
        Set<String> there = new HashSet<>();
        Array asked = connection.createArrayOf("text", hashes.toArray());
        try (PreparedStatement statement =
                connection.prepareStatement("SELECT hash FROM ohmstead.entry WHERE hash = ANY (?)")) {
            statement.setArray(1, asked);
            try (ResultSet result = statement.executeQuery()) {
                while (result.next()) {
                    there.add(result.getString(1));
                }
            }
        } finally {
            asked.free();
        }
        return there;
    }

    /** Returns where an entry stands, and whether another one is there, as of one moment. */
    public Optional<Place> place(String hash, String next) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(PLACE)) {
            statement.setString(1, next);
            statement.setString(2, hash);
            try (ResultSet result = statement.executeQuery()) {
                return result.next()
                        ? Optional.of(new Place(result.getString(1), result.getString(2), result.getBoolean(3)))
                        : Optional.empty();
            }
        }
    }

    /** Begins a chain with a row that is to be its first, unless there is one already. */
    public void begin(ChainedRow first, ChainOrigin origin) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(
                "INSERT INTO ohmstead.chain (id, parent_hash, first_seq, bench, project, amplifier)"
                        + " VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING")) {
            statement.setString(1, first.hash());
            statement.setString(2, first.previousHash());
            statement.setLong(3, first.sequence());
            statement.setString(4, origin.bench());
            statement.setString(5, origin.project());
            statement.setString(6, origin.amplifier());
            statement.executeUpdate();
        }
    }

    /** Keeps everybody else from adding to a chain until the end of the transaction; returns the hash of its last entry. */
    public Optional<String> lock(String chain) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement("SELECT last_hash FROM ohmstead.lock_chain(?)")) {
            statement.setString(1, chain);
            try (ResultSet result = statement.executeQuery()) {
                return result.next() ? Optional.of(result.getString(1)) : Optional.empty();
            }
        }
    }

    /** Adds rows to a chain. */
    public void add(String chain, List<ChainedRow> rows) throws SQLException {
        List<Array> arrays = new ArrayList<>();
        try (PreparedStatement statement = connection.prepareStatement(INSERT)) {
            statement.setString(1, chain);
            arrays.add(array("bigint", rows, ChainedRow::sequence));
            arrays.add(array("text", rows, ChainedRow::kind));
            arrays.add(array("text", rows, ChainedRow::entryId));
            arrays.add(array("text", rows, ChainedRow::recordedAt));
            arrays.add(array("text", rows, ChainedRow::body));
            arrays.add(array("text", rows, ChainedRow::previousHash));
            arrays.add(array("text", rows, ChainedRow::hash));
            for (int column = 0; column < arrays.size(); column++) {
                statement.setArray(column + 2, arrays.get(column));
            }
            statement.executeUpdate();
        } finally {
            for (Array array : arrays) {
                array.free();
            }
        }
    }

    private Array array(String type, List<ChainedRow> rows, Function<ChainedRow, Object> column) throws SQLException {
        return connection.createArrayOf(type, rows.stream().map(column).toArray());
    }

    /** Closes a chain or opens it again. */
    public void mark(String chain, String mark, String reason) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement("INSERT INTO ohmstead.chain_mark (chain, mark, reason) VALUES (?, ?, ?)")) {
            statement.setString(1, chain);
            statement.setString(2, mark);
            statement.setString(3, reason);
            statement.executeUpdate();
        }
    }
}
