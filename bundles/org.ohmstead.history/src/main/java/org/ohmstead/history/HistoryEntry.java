// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import java.util.Objects;
import org.ohmstead.testlog.search.IndexedEntry;

/**
 * An entry that was found, with where.
 *
 * @param source name of the source
 * @param entry what the index knows of it
 */
public record HistoryEntry(String source, IndexedEntry entry) {
    /** Checks that both are there. */
    public HistoryEntry {
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(entry, "entry");
    }
}
