// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.ohmstead.model.Project;
import org.ohmstead.model.Reading;
import org.ohmstead.model.json.LoadedProject;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VerifyReport;

/** A project on disk, as the words use it. */
final class ProjectFolder {
    private final Path folder;
    private final LoadedProject loaded;

    private ProjectFolder(Path folder, LoadedProject loaded) {
        this.folder = folder;
        this.loaded = loaded;
    }

    static ProjectFolder open(Path given) throws ProjectFileException {
        LoadedProject loaded = ProjectFile.read(given);
        Path folder = Files.isDirectory(given) ? given : given.toAbsolutePath().getParent();
        return new ProjectFolder(folder, loaded);
    }

    Path folder() {
        return folder;
    }

    LoadedProject loaded() {
        return loaded;
    }

    Project project() {
        return loaded.project();
    }

    Path logFile() {
        return folder.resolve("log.db");
    }

    /** Opens the log for reading; without one there is nothing to show, and the message says what makes one. */
    TestLog readLog() throws InputException, TestLogException {
        if (!Files.exists(logFile())) {
            throw new InputException(
                    "The project " + folder + " has no test log yet. Log readings first, for example with:"
                            + " ohmstead run " + folder + " --replay FOLDER");
        }
        return TestLog.openReadOnly(logFile());
    }

    /** Returns the entries of a log whose chain is whole; nothing is made from one that was tampered with. */
    static List<LogEntry> trustedEntries(TestLog log) throws InputException, TestLogException {
        requireWhole(log);
        return log.entries(LogQuery.everything());
    }

    /** Refuses a log that was changed after it was written: neither results nor further entries may rest on it. */
    static void requireWhole(TestLog log) throws InputException, TestLogException {
        Optional<String> fault = fault(log);
        if (fault.isPresent()) {
            throw new InputException(fault.get() + " Nothing was made from it or added to it.");
        }
    }

    /** Returns a sentence about what is wrong with the log's chain, or empty when it is whole. */
    static Optional<String> fault(TestLog log) throws TestLogException {
        VerifyReport report = log.verify();
        if (report.intact()) {
            return Optional.empty();
        }
        int more = report.faults().size() - 1;
        return Optional.of(
                "The test log is not whole: " + report.faults().get(0).sentence()
                        + (more > 0 ? " (and " + more + " more)" : "")
                        + " See: ohmstead log verify. Restore the log from a backup.");
    }

    static List<Reading> validReadings(List<LogEntry> entries) {
        return entries.stream()
                .filter(entry -> !entry.voided())
                .flatMap(entry -> entry.reading().stream())
                .toList();
    }
}
