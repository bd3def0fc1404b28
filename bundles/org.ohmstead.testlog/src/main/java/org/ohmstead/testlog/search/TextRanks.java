// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The order of what entries say. There may be as many such texts as entries, so that their order is worked out when the index is made,
 * and kept; the few that came since are put between.
 */
final class TextRanks {
    /** The slot of the blocks that hold the kept order. */
    static final int SLOT = 62;

    private static final int FEW_SEGMENTS = 4;
    private static final int SHARE = 16;
    private static final int GAP_BITS = 32;

    private TextRanks() {}

    /** Returns whether so many texts have come that their order is worth being worked out anew. */
    static boolean wanted(IndexFile file, IndexFile.Content content) throws SQLException, BlockCode.DamagedException {
        int whole = content.rows() / IndexColumns.SEGMENT;
        int kept = kept(file, content).size();
        return whole - kept >= Math.max(FEW_SEGMENTS, kept / SHARE);
    }

    private static List<long[]> kept(IndexFile file, IndexFile.Content content)
            throws SQLException, BlockCode.DamagedException {
        List<long[]> kept = new ArrayList<>();
        file.readAll(content, SLOT, 0, BlockCode::numbers, (segment, ranks) -> {
            if (segment == kept.size()) {
                kept.add(ranks);
            }
        });
        return kept;
    }

    /** Returns the blocks that keep the order of the texts of whole stretches. */
    static List<byte[]> blocks(Words[] words) {
        int[] ranks = WordRanks.of(words);
        List<byte[]> blocks = new ArrayList<>();
        for (int segment = 0; segment < words.length; segment++) {
            int first = segment << IndexColumns.SEGMENT_BITS;
            int count = words[segment].size();
            long[] some = new long[count];
            for (int place = 0; place < count; place++) {
                some[place] = ranks[first + place];
            }
            blocks.add(BlockCode.numbers(some, count));
        }
        return blocks;
    }

    /** Returns for the number of each text something that rises in their order; equal texts have the same. */
    static long[] of(IndexFile file, IndexFile.Content content, IndexColumns columns)
            throws SQLException, BlockCode.DamagedException {
        List<long[]> kept = kept(file, content);
        int keptSegments = Math.min(kept.size(), columns.segments());
        long[] ranks = new long[columns.segments() << IndexColumns.SEGMENT_BITS];
        int most = -1;
        for (int segment = 0; segment < keptSegments; segment++) {
            for (int place = 0; place < kept.get(segment).length; place++) {
                int rank = (int) kept.get(segment)[place];
                ranks[segment << IndexColumns.SEGMENT_BITS | place] = (long) (rank + 1) << GAP_BITS;
                most = Math.max(most, rank);
            }
        }
        int[] examples = new int[most + 1];
        for (int segment = 0; segment < keptSegments; segment++) {
            for (int place = 0; place < kept.get(segment).length; place++) {
                examples[(int) kept.get(segment)[place]] = segment << IndexColumns.SEGMENT_BITS | place;
            }
        }
        putBetween(columns, keptSegments, examples, ranks);
        return ranks;
    }

    private static void putBetween(IndexColumns columns, int keptSegments, int[] examples, long[] ranks)
            throws SQLException, BlockCode.DamagedException {
        Words[] since = new Words[columns.segments() - keptSegments];
        for (int at = 0; at < since.length; at++) {
            since[at] = columns.words(IndexField.TEXT, keptSegments + at);
        }
        int[] among = WordRanks.of(since);
        for (int at = 0; at < since.length; at++) {
            for (int place = 0; place < since[at].size(); place++) {
                int before = place(columns, examples, since[at], place);
                boolean same = before >= 0;
                long gap = same ? before + 1L : -before - 1L;
                long within = same ? 0 : 1L + among[at << IndexColumns.SEGMENT_BITS | place];
                ranks[keptSegments + at << IndexColumns.SEGMENT_BITS | place] = (gap << GAP_BITS) + within;
            }
        }
    }

    /** Returns the rank of the kept text that is the same, or the number of those before it, turned round and less one. */
    private static int place(IndexColumns columns, int[] examples, Words words, int place)
            throws SQLException, BlockCode.DamagedException {
        int low = 0;
        int high = examples.length - 1;
        while (low <= high) {
            int middle = low + high >>> 1;
            int number = examples[middle];
            Words others = columns.words(IndexField.TEXT, number >> IndexColumns.SEGMENT_BITS);
            int order = words.compare(place, others, number & IndexColumns.SEGMENT - 1);
            if (order == 0) {
                return middle;
            }
            if (order < 0) {
                high = middle - 1;
            } else {
                low = middle + 1;
            }
        }
        return -low - 1;
    }

    static long[] plain(Words[] words) {
        return Arrays.stream(WordRanks.of(words)).asLongStream().toArray();
    }
}
