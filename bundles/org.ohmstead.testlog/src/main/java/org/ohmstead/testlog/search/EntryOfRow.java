// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.sql.SQLException;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.testlog.EntryKind;

/** Makes the line of a table from a row of the index. */
final class EntryOfRow {
    private static final int MOST_TEXT = 200;
    private static final String CUT = "\u2026";

    private final IndexColumns columns;
    private final int row;

    private EntryOfRow(IndexColumns columns, int row) {
        this.columns = columns;
        this.row = row;
    }

    static IndexedEntry entry(IndexColumns columns, int row) throws SQLException, BlockCode.DamagedException {
        return new EntryOfRow(columns, row).entry();
    }

    private IndexedEntry entry() throws SQLException, BlockCode.DamagedException {
        String chain = word(IndexField.CHAIN);
        EntryKind kind = one(EntryKind.values(), IndexField.KIND)
                .orElseThrow(() -> new BlockCode.DamagedException("an entry without a kind"));
        long taken = value(IndexField.TAKEN);
        return new IndexedEntry(
                chain,
                value(IndexField.SEQUENCE),
                id(chain, kind),
                kind,
                IndexRow.moment(value(IndexField.RECORDED)),
                taken == IndexField.ABSENT ? Optional.empty() : Optional.of(IndexRow.moment(taken)),
                word(IndexField.AMPLIFIER),
                word(IndexField.SERIAL),
                word(IndexField.BENCH),
                word(IndexField.OPERATOR),
                one(Mode.values(), IndexField.MODE),
                word(IndexField.LOAD),
                figure(IndexField.LOAD_OHMS),
                figure(IndexField.SUPPLY),
                word(IndexField.STEP),
                word(IndexField.STIMULUS),
                word(IndexField.MEASUREMENT),
                figure(IndexField.POWER),
                figure(IndexField.UNCERTAINTY),
                figure(IndexField.THD),
                one(EndPointOutcome.values(), IndexField.OUTCOME),
                one(EntryState.values(), IndexField.STATE)
                        .orElseThrow(() -> new BlockCode.DamagedException("an entry without a state")),
                value(IndexField.OVERDUE) == 1,
                shortened(word(IndexField.TEXT)));
    }

    private String id(String chain, EntryKind kind) throws SQLException, BlockCode.DamagedException {
        long number = value(IndexField.NUMBER);
        if (number != IndexField.ABSENT) {
            return new EntryAddress(chain, kind, number).id();
        }
        String place = String.format(Locale.ROOT, "?%d", value(IndexField.SEQUENCE));
        return chain.isEmpty() ? place : chain + "/" + place;
    }

    private static String shortened(String text) {
        return text.length() <= MOST_TEXT
                ? text
                : text.substring(0, text.offsetByCodePoints(0, text.codePointCount(0, MOST_TEXT))) + CUT;
    }

    private long value(IndexField field) throws SQLException, BlockCode.DamagedException {
        return columns.value(field, row);
    }

    private String word(IndexField field) throws SQLException, BlockCode.DamagedException {
        return columns.word(field, row);
    }

    private OptionalDouble figure(IndexField field) throws SQLException, BlockCode.DamagedException {
        long value = value(field);
        return value == IndexField.ABSENT ? OptionalDouble.empty() : OptionalDouble.of(IndexField.toDouble(value));
    }

    private <T> Optional<T> one(T[] values, IndexField field) throws SQLException, BlockCode.DamagedException {
        long value = value(field);
        return value >= 0 && value < values.length ? Optional.of(values[(int) value]) : Optional.empty();
    }
}
