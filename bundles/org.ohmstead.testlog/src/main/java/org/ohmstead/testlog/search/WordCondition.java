// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** That a word is part of what an entry says or of one of its names, or is its id. */
final class WordCondition {
    private static final IndexField[] SEARCHED = {
        IndexField.TEXT,
        IndexField.AMPLIFIER,
        IndexField.SERIAL,
        IndexField.BENCH,
        IndexField.OPERATOR,
        IndexField.STEP,
        IndexField.LOAD,
        IndexField.MEASUREMENT
    };

    /** A column with the words of it that hold the wanted one. */
    private record Marked(long[][] values, boolean[] marks) {
        boolean holds(int segment, int place) {
            long number = values[segment][place];
            return number != IndexField.ABSENT && marks[(int) number];
        }
    }

    private final List<Marked> marked = new ArrayList<>();
    private int row = -1;

    WordCondition(IndexColumns columns, String word) throws SQLException, BlockCode.DamagedException {
        byte[] wanted = BlockCode.fold(word);
        for (IndexField field : SEARCHED) {
            Words[] words = columns.words(field);
            boolean[] marks = new boolean[words.length << IndexColumns.SEGMENT_BITS];
            boolean[] any = new boolean[words.length];
            Stretches.each(
                    words.length,
                    segment -> any[segment] =
                            words[segment].markHolding(wanted, marks, segment << IndexColumns.SEGMENT_BITS));
            if (IntStream.range(0, any.length).anyMatch(segment -> any[segment])) {
                marked.add(new Marked(columns.values(field), marks));
            }
        }
        Optional<EntryAddress> address = EntryAddress.of(word);
        if (address.isPresent()) {
            row = address.get().row(columns);
        }
    }

    int thin(int segment, int[] places, int count) {
        int first = segment << IndexColumns.SEGMENT_BITS;
        int left = 0;
        for (int at = 0; at < count; at++) {
            int place = places[at];
            if (first + place == row || holds(segment, place)) {
                places[left++] = place;
            }
        }
        return left;
    }

    private boolean holds(int segment, int place) {
        for (Marked each : marked) {
            if (each.holds(segment, place)) {
                return true;
            }
        }
        return false;
    }
}
