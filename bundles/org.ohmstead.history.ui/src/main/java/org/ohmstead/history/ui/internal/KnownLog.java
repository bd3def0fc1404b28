// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.ohmstead.history.HistoryException;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VerifyReport;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.LogIndex;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.WorkProgress;

/**
 * A project with what its log holds of results, read for reading only.
 *
 * @param folder of the project
 * @param project as it is
 * @param headHash of the log's last entry
 * @param only in which mode its entries are; empty for all modes
 * @param entries readings and figures that count
 */
record KnownLog(Path folder, Project project, String headHash, Optional<Mode> only, List<LogEntry> entries) {
    private static final Messages TEXTS = Messages.of(KnownLog.class);

    KnownLog {
        entries = List.copyOf(entries);
    }

    /** Returns the project of a folder. */
    static Project project(Path folder) throws HistoryException {
        try {
            return ProjectFile.read(folder).project();
        } catch (ProjectFileException unreadable) {
            throw new HistoryException(
                    TEXTS.text("log.unread", CompareItem.name(folder), unreadable.getMessage()), unreadable);
        }
    }

    /** Returns the hash of the last entry of a project's log; empty text when there is no log. */
    static String headHash(Path folder) throws HistoryException {
        Path file = folder.resolve(TestLog.FILE_NAME);
        if (!Files.exists(file)) {
            return "";
        }
        try (TestLog log = TestLog.openReadOnly(file)) {
            return log.headHash();
        } catch (TestLogException unreadable) {
            throw unreadable(folder, unreadable);
        }
    }

    /** Returns whether this can be used while the log has this last entry and results in this mode are wanted. */
    boolean isGood(String nowHash, Mode mode) {
        return headHash.equals(nowHash) && only.map(mode::equals).orElse(true);
    }

    /** Returns this with the project as it is now. */
    KnownLog withProject(Project newProject) {
        return new KnownLog(folder, newProject, headHash, only, entries);
    }

    /**
     * Reads a project's log; of a large one the results in one mode alone.
     *
     * @param isOpen whether it is that of the open project, beside which the search index is kept
     * @param verified whether somebody has verified the log already
     */
    static KnownLog read(
            Path folder, Project project, Mode mode, boolean isOpen, boolean verified, WorkProgress progress)
            throws HistoryException {
        Path file = folder.resolve(TestLog.FILE_NAME);
        if (!Files.exists(file)) {
            return new KnownLog(folder, project, "", Optional.empty(), List.of());
        }
        try (TestLog log = TestLog.openReadOnly(file)) {
            if (!verified) {
                check(folder, log.verify());
            }
            LogEntries results = new LogEntries(log, isOpen ? Optional.of(LogIndex.beside(file)) : Optional.empty());
            Optional<Mode> only = results.large() ? Optional.of(mode) : Optional.empty();
            List<LogEntry> entries =
                    results.results(entry -> true, List.of(Find.EVERYTHING.withMode(Optional.of(mode))), progress);
            return new KnownLog(folder, project, log.headHash(), only, entries);
        } catch (TestLogException unreadable) {
            throw unreadable(folder, unreadable);
        }
    }

    private static void check(Path folder, VerifyReport report) throws HistoryException {
        if (!report.intact()) {
            throw new HistoryException(TEXTS.text(
                    "log.notWhole",
                    CompareItem.name(folder),
                    report.faults().get(0).sentence()));
        }
    }

    private static HistoryException unreadable(Path folder, TestLogException cause) {
        return new HistoryException(TEXTS.text("log.unread", CompareItem.name(folder), cause.getMessage()), cause);
    }
}
