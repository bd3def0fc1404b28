// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VerifyReport;
import org.ohmstead.workbench.session.LogSnapshot.LogState;

/** Reads a test log whole; on any thread. */
final class LogReader {
    private static final int STEPS = 2;

    private LogReader() {}

    static LogSnapshot read(Path logFile, WorkProgress progress) {
        return Files.exists(logFile) ? snapshot(logFile, progress) : LogSnapshot.NONE;
    }

    private static LogSnapshot snapshot(Path logFile, WorkProgress progress) {
        try (TestLog log = TestLog.openReadOnly(logFile)) {
            progress.step(0, STEPS, "Verifying the chain");
            VerifyReport report = log.verify();
            progress.stopIfCancelled();
            progress.step(1, STEPS, "Reading the entries");
            return report.intact() ? whole(report, log.entries(LogQuery.everything())) : broken(report, log);
        } catch (TestLogException failure) {
            return new LogSnapshot(LogState.UNREADABLE, List.of(), "", failure.getMessage());
        }
    }

    private static LogSnapshot whole(VerifyReport report, List<LogEntry> entries) {
        String count = entries.size() == 1 ? "1 entry" : entries.size() + " entries";
        return new LogSnapshot(
                LogState.WHOLE, entries, entries.isEmpty() ? "" : report.headHash(), count + ", chain whole");
    }

    private static LogSnapshot broken(VerifyReport report, TestLog log) {
        int more = report.faults().size() - 1;
        String sentence = "The test log is not whole: " + report.faults().get(0).sentence()
                + (more > 0 ? " (and " + more + " more)" : "")
                + " Results made from it cannot be relied on. Restore it from a backup.";
        String head = report.entriesChecked() == 0 ? "" : report.headHash();
        try {
            return new LogSnapshot(LogState.BROKEN, log.entries(LogQuery.everything()), head, sentence);
        } catch (TestLogException unreadable) {
            return new LogSnapshot(LogState.BROKEN, List.of(), head, sentence + " " + unreadable.getMessage());
        }
    }
}
