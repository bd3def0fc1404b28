// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The columns of the index as they were at one time, in stretches of {@link #SEGMENT} entries that are read from the file when they are
 * needed. A word's number tells the stretch that it came up in and its place there. Whoever uses this holds the index's lock.
 */
final class IndexColumns {
    /** Entries in a stretch. */
    static final int SEGMENT = 4096;

    static final int SEGMENT_BITS = 12;

    private static final int FIRST_FIGURE_SLOT = 64;
    private static final IndexField[] FIELDS = IndexField.values();

    private final IndexFile file;
    private final IndexFile.Content content;
    private final int rows;
    private final long[][][] values;
    private final Words[][] words;
    private final boolean[] wordsWhole;
    private final Map<IndexField, long[]> ranks = new EnumMap<>(IndexField.class);

    /** A stretch of figures: which entries have the figure, and its values. */
    record Figures(long[] places, long[] figures) {}

    IndexColumns(IndexFile file, IndexFile.Content content) {
        this.file = file;
        this.content = content;
        this.rows = content.rows();
        this.values = new long[FIELDS.length][segments()][];
        this.words = new Words[FIELDS.length][segments()];
        this.wordsWhole = new boolean[FIELDS.length];
    }

    /** Returns the columns after a change, with what is known already of the stretches before it; states may have changed anywhere. */
    IndexColumns next(IndexFile.Content newContent) {
        IndexColumns next = new IndexColumns(file, newContent);
        int kept = Math.min(rows, next.rows) / SEGMENT;
        for (IndexField field : FIELDS) {
            int at = field.ordinal();
            if (field != IndexField.STATE) {
                System.arraycopy(values[at], 0, next.values[at], 0, kept);
            }
            System.arraycopy(words[at], 0, next.words[at], 0, kept);
        }
        return next;
    }

    /** Returns what reads the lines of a page. */
    LineBlocks.Reader lines() {
        return new LineBlocks.Reader(file, content);
    }

    IndexFile.Content content() {
        return content;
    }

    int rows() {
        return rows;
    }

    int segments() {
        return (rows + SEGMENT - 1) / SEGMENT;
    }

    int size(int segment) {
        return Math.min(SEGMENT, rows - segment * SEGMENT);
    }

    static int valuesSlot(IndexField field) {
        return 2 * field.ordinal();
    }

    static int wordsSlot(IndexField field) {
        return 2 * field.ordinal() + 1;
    }

    static int placesSlot(int figure) {
        return FIRST_FIGURE_SLOT + 2 * figure;
    }

    static int figuresSlot(int figure) {
        return FIRST_FIGURE_SLOT + 2 * figure + 1;
    }

    /** Returns a stretch of a column. */
    long[] values(IndexField field, int segment) throws SQLException, BlockCode.DamagedException {
        long[] known = values[field.ordinal()][segment];
        if (known == null) {
            Optional<byte[]> block = file.read(content, valuesSlot(field), segment);
            if (block.isEmpty()) {
                throw new BlockCode.DamagedException("a stretch of the column " + field + " is missing");
            }
            known = whole(segment, BlockCode.numbers(block.get()));
            values[field.ordinal()][segment] = known;
        }
        return known;
    }

    private long[] whole(int segment, long[] stretch) throws BlockCode.DamagedException {
        if (stretch.length < size(segment)) {
            throw new BlockCode.DamagedException("a stretch of a column is too short");
        }
        return stretch;
    }

    /** Returns a column, stretch by stretch. */
    long[][] values(IndexField field) throws SQLException, BlockCode.DamagedException {
        long[][] column = values[field.ordinal()];
        int first = 0;
        while (first < column.length && column[first] != null) {
            first++;
        }
        if (first < column.length) {
            file.readAll(content, valuesSlot(field), first, BlockCode::numbers, (segment, numbers) -> {
                if (segment < column.length && column[segment] == null) {
                    column[segment] = whole(segment, numbers);
                }
            });
            for (int segment = first; segment < column.length; segment++) {
                values(field, segment);
            }
        }
        return column;
    }

    long value(IndexField field, int row) throws SQLException, BlockCode.DamagedException {
        return values(field, row >> SEGMENT_BITS)[row & SEGMENT - 1];
    }

    /** Returns the words that came up in a stretch. */
    Words words(IndexField field, int segment) throws SQLException, BlockCode.DamagedException {
        Words known = words[field.ordinal()][segment];
        if (known == null) {
            Optional<byte[]> block = file.read(content, wordsSlot(field), segment);
            known = block.isPresent() ? BlockCode.words(block.get()) : Words.NONE;
            words[field.ordinal()][segment] = known;
        }
        return known;
    }

    /** Returns all words of a column, by the stretch that they came up in. */
    Words[] words(IndexField field) throws SQLException, BlockCode.DamagedException {
        Words[] all = words[field.ordinal()];
        if (!wordsWhole[field.ordinal()]) {
            file.readAll(content, wordsSlot(field), 0, BlockCode::words, (segment, some) -> {
                if (segment < all.length && all[segment] == null) {
                    all[segment] = some;
                }
            });
            for (int segment = 0; segment < all.length; segment++) {
                all[segment] = all[segment] == null ? Words.NONE : all[segment];
            }
            wordsWhole[field.ordinal()] = true;
        }
        return all;
    }

    String word(IndexField field, int row) throws SQLException, BlockCode.DamagedException {
        long number = value(field, row);
        if (number == IndexField.ABSENT) {
            return "";
        }
        int segment = (int) (number >> SEGMENT_BITS);
        int place = (int) number & SEGMENT - 1;
        if (segment < 0
                || segment >= segments()
                || place >= words(field, segment).size()) {
            throw new BlockCode.DamagedException("a word of the column " + field + " is missing");
        }
        return words(field, segment).text(place);
    }

    /** Returns for the number of each word of a column something that rises in their order; equal words have the same. */
    long[] ranks(IndexField field) throws SQLException, BlockCode.DamagedException {
        long[] known = ranks.get(field);
        if (known == null) {
            known = field == IndexField.TEXT ? TextRanks.of(file, content, this) : TextRanks.plain(words(field));
            ranks.put(field, known);
        }
        return known;
    }

    /** Returns the ids of measured figures; the place in the list is the figure's number. */
    List<String> figureIds() throws SQLException, BlockCode.DamagedException {
        List<String> ids = new ArrayList<>();
        for (Words some : words(IndexField.FIGURE_IDS)) {
            for (int number = 0; number < some.size(); number++) {
                ids.add(some.text(number));
            }
        }
        return ids;
    }

    /** Returns the figures of a kind, by stretch; null where there are none. */
    Figures[] figures(int figure) throws SQLException, BlockCode.DamagedException {
        Figures[] all = new Figures[segments()];
        long[][] places = new long[segments()][];
        file.readAll(content, placesSlot(figure), 0, BlockCode::numbers, (segment, some) -> {
            if (segment < places.length) {
                places[segment] = some;
            }
        });
        file.readAll(content, figuresSlot(figure), 0, BlockCode::numbers, (segment, some) -> {
            if (segment < all.length && places[segment] != null) {
                all[segment] = new Figures(places[segment], some);
            }
        });
        return all;
    }
}
