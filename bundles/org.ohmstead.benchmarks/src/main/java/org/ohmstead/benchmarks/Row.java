// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.io.IOException;
import java.util.List;

/** One kind of work that is measured beside a reference which does the same. */
public interface Row {
    /** Returns the word by which it is asked for. */
    String name();

    /** Returns in one line what it measures and against what. */
    String about();

    /**
     * Measures ours and the reference in turns, after a look whether they come to the same figures.
     *
     * @param room where it works
     * @return one line of the table or more
     * @throws IOException if something outside fails, or the two do not agree, with a sentence that says what
     */
    List<Outcome> measure(Room room) throws IOException, InterruptedException;
}
