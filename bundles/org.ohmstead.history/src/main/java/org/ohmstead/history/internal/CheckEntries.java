// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.internal;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.ohmstead.history.quality.TypedCheck;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.search.EntryState;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.testlog.search.IndexProgress;
import org.ohmstead.testlog.search.LogIndex;

/** The entries of a log that may hold values of check standards. A small log is read whole, of a large one the search index tells which. */
public final class CheckEntries {
    private static final long LARGEST_READ_WHOLE = 5_000;

    private CheckEntries() {}

    /** Returns them in the order of the log, those of a step together. */
    public static List<LogEntry> of(TestLog log, Project project) throws TestLogException {
        return of(log, project, LARGEST_READ_WHOLE);
    }

    /** Returns the same with another limit, above which the index is asked. */
    static List<LogEntry> of(TestLog log, Project project, long largestReadWhole) throws TestLogException {
        Set<String> steps = new LinkedHashSet<>(Set.of(TypedCheck.STEP_ID));
        project.checkStandards().stream()
                .filter(standard -> !standard.isTypedIn())
                .map(CheckStandard::stepId)
                .forEach(steps::add);
        long count = log.chains().stream().mapToLong(ChainInfo::entries).sum();
        if (count <= largestReadWhole) {
            return log.entries(LogQuery.everything()).stream()
                    .filter(entry ->
                            Set.of(EntryKind.READING, EntryKind.FIGURES).contains(entry.kind()))
                    .toList();
        }
        try (LogIndex index = LogIndex.open(LogIndex.beside(log.file()), log.rows())) {
            index.refresh(IndexProgress.NONE);
            WholeEntries whole = new WholeEntries(Words.log(log.file().toString()), log.rows());
            List<LogEntry> entries = new ArrayList<>();
            for (String step : steps) {
                entries.addAll(whole.all(index.find(
                        Find.EVERYTHING.withStepId(step).withStates(Set.of(EntryState.VALID)), FindOrder.AS_LOGGED)));
            }
            return entries;
        }
    }
}
