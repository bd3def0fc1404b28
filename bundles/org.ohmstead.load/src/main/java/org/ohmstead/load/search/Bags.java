// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.Iterator;
import java.util.NoSuchElementException;

/** The bags of a given size that can be taken out of a bag, in a fixed order. */
final class Bags implements Iterator<Bag> {
    private final int[] limits;
    private final int size;
    private byte[] upcoming;

    Bags(int[] limits, int size) {
        this.limits = limits.clone();
        this.size = size;
        upcoming = new byte[limits.length];
        if (!fill(0, size)) {
            upcoming = null;
        }
    }

    /** Returns how many bags of each size, from 0 to the greatest one, there are; at most a limit. */
    static long[] numbers(int[] limits, int greatest, long limit) {
        long[] ways = new long[greatest + 1];
        ways[0] = 1;
        for (int most : limits) {
            long[] next = new long[greatest + 1];
            for (int taken = 0; taken <= Math.min(most, greatest); taken++) {
                for (int before = 0; before + taken <= greatest; before++) {
                    next[before + taken] = Math.min(limit, next[before + taken] + ways[before]);
                }
            }
            ways = next;
        }
        return ways;
    }

    @Override
    public boolean hasNext() {
        return upcoming != null;
    }

    @Override
    public Bag next() {
        if (upcoming == null) {
            throw new NoSuchElementException("there is no further bag of " + size);
        }
        Bag bag = new Bag(upcoming.clone());
        advance();
        return bag;
    }

    private void advance() {
        int freed = 0;
        for (int kind = upcoming.length - 1; kind >= 0; kind--) {
            if (upcoming[kind] > 0) {
                // Taking one away here means that the kinds behind must hold it and all that they held.
                upcoming[kind]--;
                if (fill(kind + 1, freed + 1)) {
                    return;
                }
                freed += upcoming[kind] + 1;
                upcoming[kind] = 0;
            }
        }
        upcoming = null;
    }

    /** Puts as many as possible into the first of the kinds from one on, or returns false when they do not fit. */
    private boolean fill(int firstKind, int pieces) {
        int left = pieces;
        int room = 0;
        for (int kind = firstKind; kind < limits.length; kind++) {
            room = Math.min(size, room + limits[kind]);
        }
        if (room < pieces) {
            return false;
        }
        for (int kind = firstKind; kind < limits.length; kind++) {
            upcoming[kind] = (byte) Math.min(left, limits[kind]);
            left -= upcoming[kind];
        }
        return true;
    }
}
