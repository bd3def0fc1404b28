// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;

/** Found rows in their order; all rows of the index, in the order of the log, take no room. */
final class FoundRows implements Found {
    private static final Messages TEXTS = Messages.of(FoundRows.class);

    /**
     * The index that found them.
     *
     * @param lock what is held while its columns are read
     * @param damaged is told when they cannot be read
     */
    record Owner(Object lock, BiConsumer<IndexColumns, Exception> damaged) {}

    private final Owner owner;
    private final IndexColumns columns;
    private final int[] rows;
    private final int size;
    private final boolean falling;

    FoundRows(Owner owner, IndexColumns columns, int[] rows, boolean falling) {
        this.owner = owner;
        this.columns = columns;
        this.rows = rows;
        this.size = rows == null ? columns.rows() : rows.length;
        this.falling = falling;
    }

    @Override
    public int size() {
        return size;
    }

    private int row(int place) {
        int at = falling ? size - 1 - place : place;
        return rows == null ? at : rows[at];
    }

    @Override
    public List<IndexedEntry> page(int from, int count) throws TestLogException {
        if (from < 0 || count < 0) {
            throw new IllegalArgumentException(
                    "from is " + from + " and count is " + count + "; both must be at least 0");
        }
        synchronized (owner.lock()) {
            try {
                LineBlocks.Reader lines = columns.lines();
                List<IndexedEntry> page = new ArrayList<>();
                for (int place = from; place < size && place - from < count; place++) {
                    int row = row(place);
                    page.add(EntryOfRow.entry(lines.row(row), columns.value(IndexField.STATE, row)));
                }
                return page;
            } catch (SQLException | BlockCode.DamagedException gone) {
                throw gone(gone);
            }
        }
    }

    @Override
    public int indexOf(String entryId) throws TestLogException {
        synchronized (owner.lock()) {
            try {
                Optional<EntryAddress> address = EntryAddress.of(entryId);
                int wanted = address.isPresent() ? address.get().row(columns) : -1;
                for (int place = 0; wanted >= 0 && place < size; place++) {
                    if (row(place) == wanted) {
                        return place;
                    }
                }
                return -1;
            } catch (SQLException | BlockCode.DamagedException gone) {
                throw gone(gone);
            }
        }
    }

    private TestLogException gone(Exception cause) {
        owner.damaged().accept(columns, cause);
        return new TestLogException(TEXTS.text("index.gone"), cause);
    }
}
