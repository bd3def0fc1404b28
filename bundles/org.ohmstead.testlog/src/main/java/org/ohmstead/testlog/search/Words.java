// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Words that came up in a stretch of the log, as they are and in the form in which small and capital letters are alike. */
final class Words {
    static final Words NONE = new Words(new byte[0], new Places(0, new int[0]), new Places(0, new int[0]));

    /**
     * Where texts lie, one behind the other.
     *
     * @param start where the first begins
     * @param ends where each ends, counted from there
     */
    record Places(int start, int[] ends) {
        int size() {
            return ends.length;
        }

        int from(int number) {
            return number == 0 ? start : start + ends[number - 1];
        }

        int to(int number) {
            return start + ends[number];
        }
    }

    private final byte[] block;
    private final Places folded;
    private final Places plain;

    /** Makes words of the bytes that hold them, which are not copied. */
    Words(byte[] block, Places folded, Places plain) {
        this.block = block;
        this.folded = folded;
        this.plain = plain;
    }

    int size() {
        return folded.size();
    }

    String text(int number) {
        return text(plain, number);
    }

    String foldedText(int number) {
        return text(folded, number);
    }

    private String text(Places places, int number) {
        int start = places.from(number);
        return new String(block, start, places.to(number) - start, StandardCharsets.UTF_8);
    }

    /** Returns eight bytes of a folded word as a whole number in the order of the bytes, zeros behind its end. */
    long prefix(int number, int from) {
        int at = folded.from(number) + from;
        int end = folded.to(number);
        long prefix = 0;
        for (int step = 0; step < Long.BYTES; step++) {
            prefix = prefix << 8 | (at + step < end ? block[at + step] & 0xFF : 0);
        }
        return prefix;
    }

    /** Compares folded words by their bytes. */
    int compare(int number, Words others, int other) {
        return Arrays.compareUnsigned(
                block,
                folded.from(number),
                folded.to(number),
                others.block,
                others.folded.from(other),
                others.folded.to(other));
    }

    int foldedLength(int number) {
        return folded.to(number) - folded.from(number);
    }

    /** Marks the words that hold a folded text; returns whether any does. */
    boolean markHolding(byte[] wanted, boolean[] marks, int first) {
        boolean any = false;
        int number = 0;
        int at = folded.start();
        int last = (size() == 0 ? at : folded.to(size() - 1)) - wanted.length;
        while (at <= last) {
            at = next(wanted, at, last);
            if (at > last) {
                return any;
            }
            while (folded.to(number) <= at) {
                number++;
            }
            if (at + wanted.length <= folded.to(number)) {
                marks[first + number] = true;
                any = true;
                at = folded.to(number);
            } else {
                at++;
            }
        }
        return any;
    }

    private int next(byte[] wanted, int from, int last) {
        byte start = wanted[0];
        for (int at = from; at <= last; at++) {
            if (block[at] == start && Arrays.equals(block, at, at + wanted.length, wanted, 0, wanted.length)) {
                return at;
            }
        }
        return last + 1;
    }
}
