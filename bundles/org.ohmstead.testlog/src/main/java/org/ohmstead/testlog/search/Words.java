// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Words that came up in a stretch of the log, as they are and in the form in which small and capital letters are alike. */
final class Words {
    static final Words NONE = new Words(new byte[0], new int[0], new byte[0], new int[0]);

    private final byte[] folded;
    private final int[] foldedEnds;
    private final byte[] plain;
    private final int[] plainEnds;

    Words(byte[] folded, int[] foldedEnds, byte[] plain, int[] plainEnds) {
        this.folded = folded;
        this.foldedEnds = foldedEnds;
        this.plain = plain;
        this.plainEnds = plainEnds;
    }

    int size() {
        return foldedEnds.length;
    }

    String text(int number) {
        int start = start(plainEnds, number);
        return new String(plain, start, plainEnds[number] - start, StandardCharsets.UTF_8);
    }

    String foldedText(int number) {
        int start = start(foldedEnds, number);
        return new String(folded, start, foldedEnds[number] - start, StandardCharsets.UTF_8);
    }

    private static int start(int[] ends, int number) {
        return number == 0 ? 0 : ends[number - 1];
    }

    /** Returns eight bytes of a folded word as a whole number in the order of the bytes, zeros behind its end. */
    long prefix(int number, int from) {
        int at = start(foldedEnds, number) + from;
        int end = foldedEnds[number];
        long prefix = 0;
        for (int step = 0; step < Long.BYTES; step++) {
            prefix = prefix << 8 | (at + step < end ? folded[at + step] & 0xFF : 0);
        }
        return prefix;
    }

    /** Compares folded words by their bytes. */
    int compare(int number, Words others, int other) {
        return Arrays.compareUnsigned(
                folded,
                start(foldedEnds, number),
                foldedEnds[number],
                others.folded,
                start(others.foldedEnds, other),
                others.foldedEnds[other]);
    }

    int foldedLength(int number) {
        return foldedEnds[number] - start(foldedEnds, number);
    }

    /** Marks the words that hold a folded text; returns whether any does. */
    boolean markHolding(byte[] wanted, boolean[] marks, int first) {
        boolean any = false;
        int number = 0;
        int at = 0;
        int last = folded.length - wanted.length;
        while (at <= last) {
            at = next(wanted, at, last);
            if (at > last) {
                return any;
            }
            while (foldedEnds[number] <= at) {
                number++;
            }
            if (at + wanted.length <= foldedEnds[number]) {
                marks[first + number] = true;
                any = true;
                at = foldedEnds[number];
            } else {
                at++;
            }
        }
        return any;
    }

    private int next(byte[] wanted, int from, int last) {
        byte start = wanted[0];
        for (int at = from; at <= last; at++) {
            if (folded[at] == start && Arrays.equals(folded, at, at + wanted.length, wanted, 0, wanted.length)) {
                return at;
            }
        }
        return last + 1;
    }
}
