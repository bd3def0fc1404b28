// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.history.History;
import org.ohmstead.history.HistorySource;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.shared.LabVerifyReport;
import org.ohmstead.testlog.shared.SharedLab;
import org.ohmstead.testlog.shared.SharedLabException;

/** Readings of all benches, from the laboratory's shared log. */
final class LabReadings {
    /** What the shared log is called among the sources of a comparison. */
    static final String SOURCE = "lab";

    private final Console console;
    private final ProjectFolder folder;

    /**
     * Asks the shared log of a project.
     *
     * @param folder the project that names it; its search index is kept there
     */
    LabReadings(Console console, ProjectFolder folder) {
        this.console = console;
        this.folder = folder;
    }

    /**
     * Returns the readings that count and that a query finds.
     *
     * @param find which
     * @param known hashes of entries that are left out, because they are known from elsewhere
     */
    List<LogEntry> besides(Find find, Set<String> known) throws InputException, SharedLabException, TestLogException {
        try (SharedLab lab = LabAccess.of(folder).connect()) {
            requireWhole(lab);
            HistorySource source = new HistorySource(
                    SOURCE,
                    lab.rows(),
                    Optional.empty(),
                    Optional.of(folder.folder().resolve(LabFindCommand.INDEX_NAME)));
            try (History history = History.open(List.of(source))) {
                history.refresh(new ConsoleIndexing(console));
                return history.entries(SOURCE, find.withKinds(Set.of(EntryKind.READING))).stream()
                        .filter(entry -> !known.contains(entry.hash()))
                        .toList();
            }
        }
    }

    /** Nothing is made from a log that was changed after it was written. */
    private static void requireWhole(SharedLab lab) throws SharedLabException, InputException {
        LabVerifyReport report = lab.verify(List.of());
        if (!report.intact()) {
            throw new InputException(
                    Texts.of("lab.notWhole", report.faults().get(0).sentence()));
        }
    }
}
