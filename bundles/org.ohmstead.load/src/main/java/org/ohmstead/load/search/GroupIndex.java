// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.SplittableRandom;

/**
 * Finds listed groups by a sum: each kind has a random weight, and a bag's code is the sum of the weights of its pieces. So the code of
 * what is left of a bag is a difference, and no bag need be made to look it up. That no two bags listed have the same code is checked.
 */
final class GroupIndex {
    private static final int FIRST_CAPACITY = 1 << 12;

    private final long[] weights;
    private Group[] groups = new Group[FIRST_CAPACITY];
    private int size;

    GroupIndex(int kinds) {
        SplittableRandom random = new SplittableRandom(kinds);
        weights = random.longs(kinds).toArray();
    }

    int size() {
        return size;
    }

    long weight(int kind) {
        return weights[kind];
    }

    long code(Bag bag) {
        long code = 0;
        for (int kind = 0; kind < weights.length; kind++) {
            code += bag.count(kind) * weights[kind];
        }
        return code;
    }

    /** Returns the listed group with a code. */
    Group get(long code) {
        int place = place(groups, code);
        return groups[place];
    }

    void put(Group group) {
        if (2 * size >= groups.length) {
            Group[] larger = new Group[2 * groups.length];
            for (Group old : groups) {
                if (old != null) {
                    larger[place(larger, old.code)] = old;
                }
            }
            groups = larger;
        }
        int place = place(groups, group.code);
        if (groups[place] != null) {
            throw new IllegalStateException("Two sets of pieces have the same code " + group.code);
        }
        groups[place] = group;
        size++;
    }

    private static int place(Group[] table, long code) {
        int mask = table.length - 1;
        int place = (int) (code >>> Integer.SIZE) & mask;
        while (table[place] != null && table[place].code != code) {
            place = (place + 1) & mask;
        }
        return place;
    }
}
