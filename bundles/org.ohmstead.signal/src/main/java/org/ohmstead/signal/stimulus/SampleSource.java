// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

/** Samples that can be had from any place, in any order. Never changes, so that any thread may ask. */
interface SampleSource {
    /**
     * Fills the beginning of a block.
     *
     * @param from the first sample wanted, 0 for the first of the signal
     * @param block takes shares of full scale
     * @param count how many
     */
    void fill(long from, double[] block, int count);
}
