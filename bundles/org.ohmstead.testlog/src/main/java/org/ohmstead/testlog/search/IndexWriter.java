// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Adds rows at the end of the columns. It knows the last stretch, and the words that there are; whoever uses it holds the transaction. */
final class IndexWriter {
    private static final IndexField[] FIELDS = IndexField.stored();

    private final IndexFile file;
    private final Map<IndexField, Map<String, Long>> numbers = new EnumMap<>(IndexField.class);
    private final Map<IndexField, List<String>> newWords = new EnumMap<>(IndexField.class);
    private final Map<Integer, Stretch> figures = new HashMap<>();
    private final LineBlocks.Writer lines;
    private final long[][] tail = new long[FIELDS.length][IndexColumns.SEGMENT];
    private IndexFile.Content content;
    private int segment;
    private int count;

    /** A stretch of figures in the making. */
    private static final class Stretch {
        private long[] places = new long[16];
        private long[] values = new long[16];
        private int size;

        void add(long place, long value) {
            if (size == places.length) {
                places = Arrays.copyOf(places, 2 * size);
                values = Arrays.copyOf(values, 2 * size);
            }
            places[size] = place;
            values[size] = value;
            size++;
        }
    }

    /** Goes on where the columns end. */
    IndexWriter(IndexFile file, IndexColumns columns) throws SQLException, BlockCode.DamagedException {
        this.file = file;
        this.content = columns.content();
        this.lines = new LineBlocks.Writer(file, content);
        this.segment = columns.rows() / IndexColumns.SEGMENT;
        this.count = columns.rows() % IndexColumns.SEGMENT;
        for (IndexField field : IndexField.values()) {
            numbers.put(field, new HashMap<>());
            newWords.put(field, new ArrayList<>());
        }
        for (IndexField field : FIELDS) {
            if (count > 0) {
                System.arraycopy(columns.values(field, segment), 0, tail[field.ordinal()], 0, count);
            }
            if (field.ofWords()) {
                learn(field, columns);
            }
        }
        learnFigures(columns);
    }

    /** What an entry says is seldom said again far behind, so such words are known within a stretch only. */
    private void learn(IndexField field, IndexColumns columns) throws SQLException, BlockCode.DamagedException {
        int first = field == IndexField.TEXT ? segment : 0;
        for (int at = first; at < columns.segments(); at++) {
            Words words = field == IndexField.TEXT ? columns.words(field, at) : columns.words(field)[at];
            for (int place = 0; place < words.size(); place++) {
                learn(field, words.text(place), at, place);
            }
        }
    }

    private void learn(IndexField field, String word, int at, int place) {
        numbers.get(field).put(word, (long) at << IndexColumns.SEGMENT_BITS | place);
        if (at == segment) {
            newWords.get(field).add(word);
        }
    }

    private void learnFigures(IndexColumns columns) throws SQLException, BlockCode.DamagedException {
        Words[] ids = columns.words(IndexField.FIGURE_IDS);
        for (int at = 0; at < ids.length; at++) {
            for (int place = 0; place < ids[at].size(); place++) {
                String id = ids[at].text(place);
                numbers.get(IndexField.FIGURE_IDS)
                        .put(id, (long) numbers.get(IndexField.FIGURE_IDS).size());
                if (at == segment) {
                    newWords.get(IndexField.FIGURE_IDS).add(id);
                }
            }
        }
        for (int figure = 0;
                count > 0 && figure < numbers.get(IndexField.FIGURE_IDS).size();
                figure++) {
            Optional<byte[]> places = file.read(content, IndexColumns.placesSlot(figure), segment);
            Optional<byte[]> values = file.read(content, IndexColumns.figuresSlot(figure), segment);
            if (places.isPresent() && values.isPresent()) {
                long[] known = BlockCode.numbers(places.get());
                long[] value = BlockCode.numbers(values.get());
                Stretch stretch = new Stretch();
                for (int at = 0; at < known.length; at++) {
                    stretch.add(known[at], value[at]);
                }
                figures.put(figure, stretch);
            }
        }
    }

    /** Adds rows and writes what that changes; returns the content with them. */
    IndexFile.Content append(List<IndexRow> rows, Map<String, IndexFile.Reached> reached)
            throws SQLException, BlockCode.DamagedException {
        List<String> voids = new ArrayList<>();
        for (IndexRow row : rows) {
            if (count == IndexColumns.SEGMENT) {
                write();
                beginNext();
            }
            put(row);
            lines.add(content, row);
            row.voids().ifPresent(voids::add);
        }
        write();
        lines.write(content);
        content = file.grown(content, segment * IndexColumns.SEGMENT + count, reached);
        if (!voids.isEmpty()) {
            takeBack(voids);
        }
        return content;
    }

    private void beginNext() {
        segment++;
        count = 0;
        newWords.values().forEach(List::clear);
        numbers.get(IndexField.TEXT).clear();
        figures.clear();
    }

    private void put(IndexRow row) {
        for (IndexField field : FIELDS) {
            tail[field.ordinal()][count] = field.ofWords() ? number(field, row.word(field)) : row.value(field);
        }
        for (IndexRow.Figure figure : row.figures()) {
            long number = numbers.get(IndexField.FIGURE_IDS).computeIfAbsent(figure.id(), id -> {
                newWords.get(IndexField.FIGURE_IDS).add(id);
                return (long) numbers.get(IndexField.FIGURE_IDS).size();
            });
            figures.computeIfAbsent((int) number, none -> new Stretch())
                    .add(count, IndexField.ofDouble(figure.value()));
        }
        count++;
    }

    private long number(IndexField field, String word) {
        if (word.isEmpty() && field != IndexField.CHAIN) {
            return IndexField.ABSENT;
        }
        List<String> added = newWords.get(field);
        return numbers.get(field).computeIfAbsent(word, none -> {
            added.add(word);
            return (long) segment << IndexColumns.SEGMENT_BITS | added.size() - 1;
        });
    }

    private void write() throws SQLException {
        for (IndexField field : FIELDS) {
            file.write(
                    content, IndexColumns.valuesSlot(field), segment, BlockCode.numbers(tail[field.ordinal()], count));
        }
        for (Map.Entry<IndexField, List<String>> words : newWords.entrySet()) {
            if (!words.getValue().isEmpty()) {
                file.write(content, IndexColumns.wordsSlot(words.getKey()), segment, BlockCode.words(words.getValue()));
            }
        }
        for (Map.Entry<Integer, Stretch> figure : figures.entrySet()) {
            Stretch stretch = figure.getValue();
            file.write(
                    content,
                    IndexColumns.placesSlot(figure.getKey()),
                    segment,
                    BlockCode.numbers(stretch.places, stretch.size));
            file.write(
                    content,
                    IndexColumns.figuresSlot(figure.getKey()),
                    segment,
                    BlockCode.numbers(stretch.values, stretch.size));
        }
    }

    /** Marks entries that were voided. */
    private void takeBack(List<String> ids) throws SQLException, BlockCode.DamagedException {
        IndexColumns columns = new IndexColumns(file, content);
        for (String id : ids) {
            Optional<EntryAddress> address = EntryAddress.of(id);
            int row = address.isPresent() ? address.get().row(columns) : -1;
            if (row >= 0) {
                int at = row >> IndexColumns.SEGMENT_BITS;
                int place = row & IndexColumns.SEGMENT - 1;
                long[] states = columns.values(IndexField.STATE, at);
                states[place] = EntryState.VOIDED.ordinal();
                if (at == segment) {
                    tail[IndexField.STATE.ordinal()][place] = EntryState.VOIDED.ordinal();
                }
                file.write(
                        content,
                        IndexColumns.valuesSlot(IndexField.STATE),
                        at,
                        BlockCode.numbers(states, states.length));
            }
        }
    }
}
