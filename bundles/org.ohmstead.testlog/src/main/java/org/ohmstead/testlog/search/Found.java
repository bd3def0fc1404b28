// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.util.List;
import org.ohmstead.testlog.TestLogException;

/** What a search found, as the log was then; entries that are indexed later do not change it. */
public interface Found {
    /** Returns how many entries were found. */
    int size();

    /**
     * Returns some of them in their order.
     *
     * @param from place of the first, counted from 0
     * @param count how many at most
     * @return fewer when there are no more
     * @throws TestLogException when the index was damaged meanwhile; then search again
     */
    List<IndexedEntry> page(int from, int count) throws TestLogException;

    /**
     * Returns the place of an entry, counted from 0, or -1 when it is not among those found; small letters will do.
     *
     * @throws TestLogException when the index was damaged meanwhile; then search again
     */
    int indexOf(String entryId) throws TestLogException;
}
