// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.List;
import java.util.Optional;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.chain.ChainedRow;

/**
 * What the audit page tells of a log.
 *
 * @param chains its own chain first, then those that were joined to it
 * @param joins the entries that say where chains joined, in their order
 * @param archives the entries that say when the project was put away, in their order
 * @param last the last two entries of its own chain, or fewer, as they are stored
 */
record AuditFacts(List<ChainInfo> chains, List<LogEntry> joins, List<LogEntry> archives, List<ChainedRow> last) {
    static final AuditFacts NOTHING = new AuditFacts(List.of(), List.of(), List.of(), List.of());

    AuditFacts {
        chains = List.copyOf(chains);
        joins = List.copyOf(joins);
        archives = List.copyOf(archives);
        last = List.copyOf(last);
    }

    /** Returns the log's own chain, when it has entries. */
    Optional<ChainInfo> own() {
        return chains.stream()
                .filter(chain -> chain.label().isEmpty() && chain.entries() > 0)
                .findFirst();
    }
}
