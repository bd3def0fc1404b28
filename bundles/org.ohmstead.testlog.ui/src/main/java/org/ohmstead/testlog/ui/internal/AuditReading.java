// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.testlog.search.Found;
import org.ohmstead.testlog.search.IndexedEntry;

/** Reads what the audit page tells of a log, in the background. */
final class AuditReading {
    private static final int EXAMPLES = 2;
    private static final int MOST_NOTED = 200;

    private AuditReading() {}

    /**
     * Reads.
     *
     * @param finder knows where the joins and archives are
     */
    static AuditFacts read(Path logFile, EntryFinder finder) throws TestLogException {
        Found found =
                finder.find(Find.EVERYTHING.withKinds(Set.of(EntryKind.JOIN, EntryKind.ARCHIVE)), FindOrder.AS_LOGGED);
        List<IndexedEntry> noted = found.page(Math.max(0, found.size() - MOST_NOTED), MOST_NOTED);
        List<LogEntry> joins = new ArrayList<>();
        List<LogEntry> archives = new ArrayList<>();
        for (LogEntry entry : finder.entries(noted)) {
            if (entry.chain().isEmpty()) {
                entry.join().ifPresent(note -> joins.add(entry));
                entry.archive().ifPresent(note -> archives.add(entry));
            }
        }
        try (TestLog log = TestLog.openReadOnly(logFile)) {
            List<ChainInfo> chains = log.chains();
            Optional<ChainInfo> own = chains.stream()
                    .filter(chain -> chain.label().isEmpty() && chain.entries() > 0)
                    .findFirst();
            List<ChainedRow> last = own.isEmpty()
                    ? List.of()
                    : log.rows().rows(own.get().chain(), Math.max(0, own.get().lastSequence() - EXAMPLES), EXAMPLES);
            return new AuditFacts(chains, joins, archives, last);
        }
    }
}
