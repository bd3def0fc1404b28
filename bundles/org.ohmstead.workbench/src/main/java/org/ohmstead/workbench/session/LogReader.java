// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.ClockStep;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VerifyReport;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.NewestEntries.Newest;

/** Checks a test log wholly and reads its newest entries; on any thread. */
final class LogReader {
    private static final Messages TEXTS = Messages.of(LogReader.class);
    private static final int STEPS = 2;
    /** While so many entries or fewer were added since, a clock that was set back is news. */
    private static final int CLOCK_NEWS = 10;

    private final Path logFile;
    private final String amplifier;
    private final List<LogEntry> before;
    private final int most;

    private LogReader(Path logFile, String amplifier, List<LogEntry> before, int most) {
        this.logFile = logFile;
        this.amplifier = amplifier;
        this.before = before;
        this.most = most;
    }

    static LogSnapshot read(Path logFile, WorkProgress progress) {
        return read(logFile, "", List.of(), progress);
    }

    /**
     * Reads a log.
     *
     * @param amplifier which joined entries are wanted, beside those that do not say what they are about
     * @param before entries that were read earlier
     */
    static LogSnapshot read(Path logFile, String amplifier, List<LogEntry> before, WorkProgress progress) {
        return new LogReader(logFile, amplifier, before, LogSnapshot.MOST_ENTRIES).read(progress);
    }

    static LogSnapshot readAtMost(int most, Path logFile, String amplifier, WorkProgress progress) {
        return new LogReader(logFile, amplifier, List.of(), most).read(progress);
    }

    private LogSnapshot read(WorkProgress progress) {
        return Files.exists(logFile) ? snapshot(progress) : LogSnapshot.NONE;
    }

    private LogSnapshot snapshot(WorkProgress progress) {
        try (TestLog log = TestLog.openReadOnly(logFile)) {
            progress.step(0, STEPS, TEXTS.text("log.step.verify"));
            VerifyReport report = log.verify();
            progress.stopIfCancelled();
            progress.step(1, STEPS, TEXTS.text("log.step.read"));
            return report.intact() ? whole(report, newest(log)) : broken(report, log);
        } catch (TestLogException failure) {
            return new LogSnapshot(LogState.UNREADABLE, List.of(), "", failure.getMessage());
        }
    }

    private Newest newest(TestLog log) throws TestLogException {
        List<ChainInfo> chains = log.chains();
        long total = chains.stream().mapToLong(ChainInfo::entries).sum();
        if (total <= most && chains.size() <= 1) {
            return new Newest(log.entries(LogQuery.everything()), 0, 0);
        }
        return NewestEntries.read(log.rows(), TEXTS.text("log.where", logFile), amplifier, before, most);
    }

    private static LogSnapshot whole(VerifyReport report, Newest newest) {
        long total = newest.entries().size() + newest.older() + newest.others();
        String sentence = TEXTS.text(total == 1 ? "log.whole.one" : "log.whole.many", Long.toString(total));
        return new LogSnapshot(
                LogState.WHOLE,
                newest.entries(),
                total == 0 ? "" : report.headHash(),
                sentence,
                newest.older(),
                newest.others(),
                clock(report, newest.entries()));
    }

    /** The user is told while it is news; the check of the log tells it for good. */
    private static String clock(VerifyReport report, List<LogEntry> entries) {
        long last = entries.stream()
                .filter(entry -> !entry.joined())
                .mapToLong(LogEntry::sequence)
                .max()
                .orElse(0);
        return report.clockSteps().stream()
                .filter(step -> step.entryId().indexOf('/') < 0 && step.sequence() > last - CLOCK_NEWS)
                .reduce((earlier, later) -> later)
                .map(ClockStep::sentence)
                .orElse("");
    }

    private LogSnapshot broken(VerifyReport report, TestLog log) {
        int more = report.faults().size() - 1;
        String fault = report.faults().get(0).sentence();
        String sentence = more > 0
                ? TEXTS.text("log.broken.several", fault, Integer.toString(more))
                : TEXTS.text("log.broken", fault);
        String head = report.entriesChecked() == 0 ? "" : report.headHash();
        try {
            Newest newest = newest(log);
            return new LogSnapshot(LogState.BROKEN, newest.entries(), head, sentence, newest.older(), newest.others());
        } catch (TestLogException unreadable) {
            return new LogSnapshot(LogState.BROKEN, List.of(), head, sentence + " " + unreadable.getMessage());
        }
    }
}
