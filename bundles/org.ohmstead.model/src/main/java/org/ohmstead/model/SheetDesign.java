// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/** How a results sheet is laid out. */
public enum SheetDesign {
    /** One page for the bench: ratings, power, one chart. */
    BENCH,
    /** Everything: results, uncertainty, every reading, bench and method. */
    FULL,
    /** Amplifiers, or periods of one, beside each other. */
    COMPARISON,
    /** For teaching: the results explained step by step, with room for the learner's own predictions and notes. */
    HANDOUT
}
