// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

/**
 * The order of words by their folded bytes. Eight bytes are compared at a time, as one whole number: all words are sorted by their first
 * eight, then those that share them by the next, and so on.
 */
final class WordRanks {
    private final Words[] words;
    private final int[] ranks;
    private int next;

    private WordRanks(Words[] words) {
        this.words = words;
        this.ranks = new int[words.length << IndexColumns.SEGMENT_BITS];
    }

    /** Returns the rank of each word at its number. */
    static int[] of(Words[] words) {
        int count = 0;
        for (Words some : words) {
            count += some.size();
        }
        int[] numbers = new int[count];
        int at = 0;
        for (int segment = 0; segment < words.length; segment++) {
            for (int place = 0; place < words[segment].size(); place++) {
                numbers[at++] = segment << IndexColumns.SEGMENT_BITS | place;
            }
        }
        WordRanks made = new WordRanks(words);
        made.rank(numbers, 0);
        return made.ranks;
    }

    private void rank(int[] numbers, int from) {
        long[] keys = new long[numbers.length];
        int depth = from;
        while (!fill(keys, numbers, depth)) {
            if (isEnd(numbers, depth)) {
                give(numbers);
                return;
            }
            depth += Long.BYTES;
        }
        int[] order = RowSort.order(keys);
        int start = 0;
        while (start < order.length) {
            int end = start + 1;
            while (end < order.length && keys[order[end]] == keys[order[start]]) {
                end++;
            }
            int[] same = new int[end - start];
            for (int at = start; at < end; at++) {
                same[at - start] = numbers[order[at]];
            }
            if (same.length == 1) {
                give(same);
            } else {
                rank(same, depth + Long.BYTES);
            }
            start = end;
        }
    }

    /** Takes the next eight bytes of the words; returns whether they differ. */
    private boolean fill(long[] keys, int[] numbers, int depth) {
        boolean differ = false;
        for (int at = 0; at < numbers.length; at++) {
            long prefix = words[numbers[at] >> IndexColumns.SEGMENT_BITS].prefix(
                    numbers[at] & IndexColumns.SEGMENT - 1, depth);
            // As signed numbers they have the order of the bytes when the highest bit is turned round.
            keys[at] = prefix ^ Long.MIN_VALUE;
            differ |= keys[at] != keys[0];
        }
        return differ;
    }

    private boolean isEnd(int[] numbers, int depth) {
        for (int number : numbers) {
            Words some = words[number >> IndexColumns.SEGMENT_BITS];
            if (some.foldedLength(number & IndexColumns.SEGMENT - 1) > depth) {
                return false;
            }
        }
        return true;
    }

    private void give(int[] numbers) {
        for (int number : numbers) {
            ranks[number] = next;
        }
        next++;
    }
}
