// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.nio.file.Files;
import java.util.List;
import org.ohmstead.jobs.JobException;
import org.ohmstead.jobs.LogTrust;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.thermal.plan.ReadingPowers;

/** The powers that the readings of a project's log tell. */
final class LogPowers {
    private LogPowers() {}

    /** Returns what the log of a project tells; nothing is made from a log that was tampered with. */
    static ReadingPowers of(ProjectFolder folder) throws JobException, TestLogException {
        try (TestLog log = folder.readLog()) {
            return powers(LogTrust.trustedEntries(log), folder);
        }
    }

    /** Returns the same, or what an empty log tells where there is none or one that is not whole. */
    static ReadingPowers ifAny(ProjectFolder folder) throws JobException, TestLogException {
        if (Files.exists(folder.logFile())) {
            try (TestLog log = folder.readLog()) {
                if (LogTrust.fault(log).isEmpty()) {
                    return powers(log.entries(LogQuery.everything()), folder);
                }
            }
        }
        return ReadingPowers.of(List.of());
    }

    private static ReadingPowers powers(List<LogEntry> entries, ProjectFolder folder) {
        return ReadingPowers.of(LogTrust.usedReadings(entries, folder.project()));
    }
}
