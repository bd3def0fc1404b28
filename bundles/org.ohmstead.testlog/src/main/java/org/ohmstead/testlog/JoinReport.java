// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.util.Objects;
import java.util.Optional;

/**
 * What came of joining another log.
 *
 * @param added number of entries that were new; 0 when all were there already
 * @param entry the entry that says so, the last one when several chains were joined; empty when nothing was new
 * @param sentence what was done, in whole sentences
 */
public record JoinReport(int added, Optional<LogEntry> entry, String sentence) {
    public JoinReport {
        Objects.requireNonNull(entry, "entry");
        Objects.requireNonNull(sentence, "sentence");
    }
}
