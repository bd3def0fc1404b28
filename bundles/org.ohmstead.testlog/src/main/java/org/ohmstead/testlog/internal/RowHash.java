// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** Computes the hashes of rows, one after the other or, of long logs, many side by side. */
public final class RowHash {
    private static final int HASH_BYTES = 32;

    /** Fewer side by side are not worth it. */
    private static final int FEW = 16;

    /** A row with more is hashed by itself, so that none takes much memory. */
    private static final int MOST_BLOCKS = 1024;

    private final MessageDigest digest;
    private HashLanes lanes;

    /** Prepares for rows. */
    public RowHash() {
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java platform must provide SHA-256", missing);
        }
    }

    /** Returns whether the content of a row gives the hash that is stored with it. */
    public boolean fits(RawRow row) {
        return isText(row.computedHash(digest), row.hash);
    }

    /** Returns of each row whether its content gives the hash that is stored with it. */
    boolean[] fit(List<RawRow> rows) {
        boolean[] fit = new boolean[rows.size()];
        for (int at = 0; at < fit.length; at++) {
            fit[at] = fits(rows.get(at));
        }
        return fit;
    }

    /**
     * Returns the same as {@link #fit}, with the rows hashed side by side. That is faster when it was done some thousand times. Whatever
     * does not fit then is looked at again with the platform's digest, which has the last word before a row is called changed.
     */
    boolean[] fitSideBySide(List<RawRow> rows) {
        if (lanes == null) {
            lanes = new HashLanes();
        }
        boolean[] fit = new boolean[rows.size()];
        for (int from = 0; from < fit.length; from += HashLanes.LANES) {
            int to = Math.min(from + HashLanes.LANES, fit.length);
            fitLanes(rows, sortedByLength(rows, from, to), fit);
        }
        for (int at = 0; at < fit.length; at++) {
            fit[at] = fit[at] || fits(rows.get(at));
        }
        return fit;
    }

    /** The few rows that are far longer than all others would have nothing beside them, and are left out. */
    private void fitLanes(List<RawRow> rows, int[] order, boolean[] fit) {
        RawRow among = rows.get(order[Math.min(FEW, order.length - 1)]);
        int limit = Math.min(MOST_BLOCKS, 2 * HashLanes.blocks(among.length()));
        int[] beside = Arrays.stream(order)
                .filter(at -> HashLanes.blocks(rows.get(at).length()) <= limit)
                .toArray();
        lanes.hash(
                Arrays.stream(beside).mapToObj(rows::get).toList(),
                (lane, hash) -> fit[beside[lane]] = isText(hash, rows.get(beside[lane]).hash));
    }

    private static int[] sortedByLength(List<RawRow> rows, int from, int to) {
        return IntStream.range(from, to)
                .mapToLong(at -> -((long) rows.get(at).length() << Integer.SIZE) + at)
                .sorted()
                .mapToInt(key -> (int) key)
                .toArray();
    }

    private static boolean isText(byte[] hash, byte[] text) {
        if (text.length != 2 * HASH_BYTES) {
            return false;
        }
        for (int at = 0; at < HASH_BYTES; at++) {
            int value = hash[at] & 0xFF;
            if (text[2 * at] != digit(value >> 4) || text[2 * at + 1] != digit(value & 0xF)) {
                return false;
            }
        }
        return true;
    }

    private static int digit(int value) {
        return value < 10 ? '0' + value : 'a' + value - 10;
    }
}
