// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/** How far a row of a fuse table can be trusted; to be printed wherever it is shown. */
public enum FuseProvenance {
    /** Written down without the standard at hand. */
    FROM_MEMORY("from memory, not checked against the standard; use the fuse maker's curve"),
    /** Read in the source named. */
    SOURCED("as the source states");

    private final String words;

    FuseProvenance(String words) {
        this.words = words;
    }

    /** Returns the words to print. */
    public String words() {
        return words;
    }
}
