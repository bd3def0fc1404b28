// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/** Squared magnitudes of the lines of a spectrum. They are asked for some at a time, so that not all of them need lie in memory. */
interface Lines {
    /** As many as stay in the processor's nearest cache, while what is wanted of them is worked out. */
    int TOGETHER = 1024;

    /** Returns the number of lines, from that at zero on. */
    int count();

    /** Writes the squares of the lines from one (included) to another (excluded) to the beginning of a place. */
    void squares(int from, int to, double[] target);

    /** The lines of a spectrum that is there. */
    static Lines of(double[] squares) {
        return new Lines() {
            @Override
            public int count() {
                return squares.length;
            }

            @Override
            public void squares(int from, int to, double[] target) {
                System.arraycopy(squares, from, target, 0, to - from);
            }
        };
    }
}
