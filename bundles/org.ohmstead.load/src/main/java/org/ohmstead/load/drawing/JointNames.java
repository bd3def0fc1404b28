// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.drawing;

/** Names the places where leads meet: A and B for the terminals, then C, D and so on, AA after Z. */
final class JointNames {
    /** The number of the left terminal. */
    static final int LEFT = 0;

    /** The number of the right terminal. */
    static final int RIGHT = 1;

    private static final int LETTERS = 26;

    private int next = RIGHT + 1;

    /** Returns the number of one more joint. */
    int another() {
        return next++;
    }

    /** Returns how many there are by now. */
    int size() {
        return next;
    }

    static String name(int joint) {
        String last = String.valueOf((char) ('A' + joint % LETTERS));
        return joint < LETTERS ? last : name(joint / LETTERS - 1) + last;
    }
}
