// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.ohmstead.model.Project;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VerifyReport;
import org.ohmstead.units.text.Messages;

/** Whether anything may be made from a test log, and what counts in it. */
public final class LogTrust {
    private static final Messages TEXTS = Messages.of(LogTrust.class);

    private LogTrust() {}

    /**
     * Returns the entries of a log whose chain is whole; nothing is made from one that was tampered with.
     *
     * @throws JobException when the chain is broken
     * @throws TestLogException when the log cannot be read
     */
    public static List<LogEntry> trustedEntries(TestLog log) throws JobException, TestLogException {
        requireWhole(log);
        return log.entries(LogQuery.everything());
    }

    /**
     * Refuses a log that was changed after it was written: neither results nor further entries may rest on it.
     *
     * @throws JobException when the chain is broken
     * @throws TestLogException when the log cannot be read
     */
    public static void requireWhole(TestLog log) throws JobException, TestLogException {
        Optional<String> fault = fault(log);
        if (fault.isPresent()) {
            throw new JobException(JobException.Reason.BROKEN_LOG, TEXTS.text("log.broken.unused", fault.get()));
        }
    }

    /**
     * Opens a log that is whole, to add entries to it; a new one where there is none.
     *
     * @param told hears, in whole sentences, of an entry added that says an earlier time than the one ahead of it
     * @throws JobException when the chain is broken
     * @throws TestLogException when the log cannot be opened or read
     */
    public static TestLog openToAdd(Path logFile, Consumer<String> told) throws JobException, TestLogException {
        TestLog log = TestLog.open(logFile);
        boolean whole = false;
        try {
            log.whenClockWentBack(told);
            requireWhole(log);
            whole = true;
            return log;
        } finally {
            if (!whole) {
                log.close();
            }
        }
    }

    /**
     * Returns a sentence about what is wrong with the log's chain, and what to do, or empty when it is whole.
     *
     * @throws TestLogException when the log cannot be read
     */
    public static Optional<String> fault(TestLog log) throws TestLogException {
        VerifyReport report = log.verify();
        if (report.intact()) {
            return Optional.empty();
        }
        int more = report.faults().size() - 1;
        return Optional.of(
                more > 0
                        ? TEXTS.text(
                                "log.broken.several", report.faults().get(0).sentence(), Integer.toString(more))
                        : TEXTS.text("log.broken", report.faults().get(0).sentence()));
    }

    /** Returns the entries whose readings curves and verdicts rest on, in their order: neither voided nor set aside by the project. */
    public static List<LogEntry> usedEntries(List<LogEntry> entries, Project project) {
        return entries.stream()
                .filter(entry -> entry.reading().isPresent() && !entry.voided())
                .filter(entry -> project.reasonSetAside(entry.id()).isEmpty())
                .toList();
    }

    /** Returns the readings of {@link #usedEntries}. */
    public static List<Reading> usedReadings(List<LogEntry> entries, Project project) {
        return usedEntries(entries, project).stream()
                .flatMap(entry -> entry.reading().stream())
                .toList();
    }
}
