// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.ohmstead.history.History;
import org.ohmstead.history.HistorySource;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.IndexProgress;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.WorkProgress;

/** The entries of a log that matter to a question: a small log is looked through, of a large one the search index tells which. */
final class LogEntries {
    private static final Messages TEXTS = Messages.of(LogEntries.class);

    /** A log with more entries is a large one. */
    static final long LARGEST_LOOKED_THROUGH = 20_000;

    private static final Set<EntryKind> RESULTS = Set.of(EntryKind.READING, EntryKind.FIGURES);

    private final TestLog log;
    private final Optional<Path> indexFile;
    private final long largest;

    /**
     * Asks a log.
     *
     * @param indexFile where the search index of a large log is kept; empty to keep it in memory
     */
    LogEntries(TestLog log, Optional<Path> indexFile) {
        this(log, indexFile, LARGEST_LOOKED_THROUGH);
    }

    LogEntries(TestLog log, Optional<Path> indexFile, long largest) {
        this.log = log;
        this.indexFile = indexFile;
        this.largest = largest;
    }

    /** Returns whether the log is a large one. */
    boolean large() throws TestLogException {
        long count = 0;
        for (ChainInfo chain : log.chains()) {
            count += chain.entries();
        }
        return count > largest;
    }

    /**
     * Returns the readings and figures that count and are wanted, in the order of the log, of a large log question by question.
     *
     * @param wanted which, of a small log
     * @param questions the same for the search index
     */
    List<LogEntry> results(Predicate<LogEntry> wanted, List<Find> questions, WorkProgress progress)
            throws TestLogException {
        return large() ? searched(questions, progress) : lookedThrough(wanted, progress);
    }

    private List<LogEntry> lookedThrough(Predicate<LogEntry> wanted, WorkProgress progress) throws TestLogException {
        LogQuery everything = LogQuery.everything();
        LogQuery results = new LogQuery(
                RESULTS, everything.mode(), everything.loadId(), everything.stepId(), everything.since(), false);
        List<LogEntry> entries = new ArrayList<>();
        log.forEach(results, entry -> {
            progress.stopIfCancelled();
            if (wanted.test(entry)) {
                entries.add(entry);
            }
        });
        return entries;
    }

    private List<LogEntry> searched(List<Find> questions, WorkProgress progress) throws TestLogException {
        String name = log.file().toString();
        HistorySource source = new HistorySource(name, log.rows(), Optional.empty(), indexFile);
        List<LogEntry> entries = new ArrayList<>();
        try (History history = History.open(List.of(source))) {
            history.refresh(following(progress));
            for (Find question : questions) {
                progress.stopIfCancelled();
                entries.addAll(history.entries(name, question.withKinds(RESULTS)));
            }
        }
        return entries;
    }

    private static IndexProgress following(WorkProgress progress) {
        return new IndexProgress() {
            private static final int STEPS = 1000;

            @Override
            public void indexed(long done, long total) {
                progress.step((int) (STEPS * done / Math.max(1, total)), STEPS, TEXTS.text("log.indexing"));
            }

            @Override
            public boolean cancelled() {
                return progress.cancelled();
            }
        };
    }
}
