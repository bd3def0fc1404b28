// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.util.List;
import java.util.Objects;
import org.ohmstead.testlog.LogEntry;

/**
 * What a log held when its chain was checked and found whole.
 *
 * @param entries all of them, in their order
 * @param headHash hash of the last entry; empty text when there is no log
 */
public record VerifiedLog(List<LogEntry> entries, String headHash) {
    /** Copies the list. */
    public VerifiedLog {
        entries = List.copyOf(entries);
        Objects.requireNonNull(headHash, "headHash");
    }
}
