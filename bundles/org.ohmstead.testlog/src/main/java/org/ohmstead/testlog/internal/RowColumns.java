// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.ohmstead.testlog.chain.ChainedRow;

/** The columns that hold a row, the same for a log's own entries and for joined ones. */
final class RowColumns {
    static final String NAMES = "seq, kind, entry_id, recorded_at, body, previous_hash, hash";

    /**
     * The short columns in one, just as they are hashed, and the body: less to ask the database for when there are many rows. The columns
     * by themselves are for rows that cannot be taken apart again.
     */
    static final String RAW = "concat_ws(char(10), hash, previous_hash, seq, kind, entry_id, recorded_at, ''), body,"
            + " seq, kind, entry_id, recorded_at, previous_hash, hash";

    private static final byte[] NOTHING = {};

    /** Takes one row after the other. */
    @FunctionalInterface
    interface RawConsumer {
        void accept(RawRow row) throws SQLException;
    }

    private RowColumns() {}

    static void set(PreparedStatement statement, int first, ChainedRow row) throws SQLException {
        statement.setLong(first, row.sequence());
        statement.setString(first + 1, row.kind());
        statement.setString(first + 2, row.entryId());
        statement.setString(first + 3, row.recordedAt());
        statement.setString(first + 4, row.body());
        statement.setString(first + 5, row.previousHash());
        statement.setString(first + 6, row.hash());
    }

    static List<ChainedRow> rows(PreparedStatement statement) throws SQLException {
        List<ChainedRow> rows = new ArrayList<>();
        try (ResultSet result = statement.executeQuery()) {
            while (result.next()) {
                rows.add(new ChainedRow(
                        result.getLong(1),
                        text(result, 2),
                        text(result, 3),
                        text(result, 4),
                        text(result, 5),
                        text(result, 6),
                        text(result, 7)));
            }
        }
        return rows;
    }

    /** Hands over rows that were selected as {@link #RAW}. */
    static void forEachRaw(ResultSet result, RawConsumer consumer) throws SQLException {
        while (result.next()) {
            Optional<RawRow> row = RawRow.split(bytes(result, 1), bytes(result, 2));
            consumer.accept(row.isPresent() ? row.get() : columnByColumn(result));
        }
    }

    private static RawRow columnByColumn(ResultSet result) throws SQLException {
        return new RawRow(
                result.getLong(3),
                bytes(result, 4),
                bytes(result, 5),
                bytes(result, 6),
                bytes(result, 2),
                bytes(result, 7),
                bytes(result, 8));
    }

    static String text(ResultSet result, int column) throws SQLException {
        return Objects.requireNonNullElse(result.getString(column), "");
    }

    private static byte[] bytes(ResultSet result, int column) throws SQLException {
        return Objects.requireNonNullElse(result.getBytes(column), NOTHING);
    }
}
