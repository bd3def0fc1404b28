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

    /** Returns the valid readings of a log whose chain is whole; results are never made from one that was tampered with. */
    static List<LogEntry> trustedEntries(TestLog log) throws InputException, TestLogException {
        VerifyReport report = log.verify(Optional.empty());
        if (!report.intact()) {
            throw new InputException("The test log is not whole: "
                    + report.faults().get(0).sentence()
                    + (report.faults().size() > 1 ? " (and " + (report.faults().size() - 1) + " more)" : "")
                    + " Nothing was made from it. See: ohmstead log verify; restore the log from a backup.");
        }
        return log.entries(LogQuery.everything());
    }

    static List<Reading> validReadings(List<LogEntry> entries) {
        return entries.stream()
                .filter(entry -> !entry.voided())
                .flatMap(entry -> entry.reading().stream())
                .toList();
    }
}
