// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.Arrays;

/** How many pieces of each kind. */
final class Bag {
    private final byte[] counts;
    private final int size;
    private final int hash;

    Bag(byte[] counts) {
        this.counts = counts;
        int sum = 0;
        for (byte count : counts) {
            sum += count;
        }
        size = sum;
        hash = Arrays.hashCode(counts);
    }

    int size() {
        return size;
    }

    byte[] counts() {
        return counts.clone();
    }

    int count(int kind) {
        return counts[kind];
    }

    /** Returns the first kind there is a piece of. */
    int firstKind() {
        int kind = 0;
        while (counts[kind] == 0) {
            kind++;
        }
        return kind;
    }

    /** Returns whether there is a piece of a kind but none of those before it. */
    boolean startsWith(int kind) {
        return counts[kind] > 0 && firstKind() == kind;
    }

    Bag with(Bag other) {
        byte[] sum = counts.clone();
        for (int kind = 0; kind < sum.length; kind++) {
            sum[kind] += other.counts[kind];
        }
        return new Bag(sum);
    }

    Bag without(Bag part) {
        byte[] rest = counts.clone();
        for (int kind = 0; kind < rest.length; kind++) {
            rest[kind] -= part.counts[kind];
        }
        return new Bag(rest);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Bag bag && Arrays.equals(counts, bag.counts);
    }

    @Override
    public int hashCode() {
        return hash;
    }
}
