// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VerifyReport;
import org.ohmstead.units.text.Messages;

/** The part of the desk that keeps the snapshot of the test log and the chosen entry. User interface's thread only. */
final class LogDesk {
    private static final Messages TEXTS = Messages.of(LogDesk.class);
    private static final LogSnapshot READING = new LogSnapshot(LogSnapshot.LogState.READING, List.of(), "", "");

    private final BackgroundWork work;
    private final DeskListeners listeners;
    private final Runnable changed;
    private final Supplier<String> amplifier;
    private Optional<Path> logFile = Optional.empty();
    private LogSnapshot log = LogSnapshot.NONE;
    private LogStamp stamp = new LogStamp("", "");
    private Optional<LogEntry> chosen = Optional.empty();
    private long latest;

    /**
     * Makes a desk without a log.
     *
     * @param changed runs when the log was read anew
     * @param amplifier names the amplifier of the open project
     */
    LogDesk(BackgroundWork work, DeskListeners listeners, Runnable changed, Supplier<String> amplifier) {
        this.work = work;
        this.listeners = listeners;
        this.changed = changed;
        this.amplifier = amplifier;
    }

    LogSnapshot log() {
        return log;
    }

    LogStamp stamp() {
        return stamp;
    }

    Optional<LogEntry> chosen() {
        return chosen;
    }

    void choose(Optional<LogEntry> entry) {
        if (!entry.equals(chosen)) {
            chosen = entry;
            listeners.tell(listener -> listener.chosenEntryChanged(entry));
        }
    }

    /** Turns to the log of another project, or to none. */
    void turnTo(Optional<Path> newLogFile) {
        logFile = newLogFile;
        choose(Optional.empty());
        show(newLogFile.isPresent() ? READING : LogSnapshot.NONE);
        refresh();
    }

    private void show(LogSnapshot snapshot) {
        log = snapshot;
        listeners.tell(listener -> listener.logChanged(snapshot));
        changed.run();
    }

    /** Reads the log anew; of several readings only the one begun last counts. */
    void refresh() {
        latest++;
        if (logFile.isEmpty()) {
            return;
        }
        long mine = latest;
        Path file = logFile.get();
        stamp = LogStamp.of(file);
        String about = amplifier.get();
        List<LogEntry> before = log.entries();
        work.start(
                TEXTS.text("log.read.job"),
                progress -> LogReader.read(file, about, before, progress),
                snapshot -> take(mine, snapshot),
                failure -> take(
                        mine,
                        new LogSnapshot(
                                LogSnapshot.LogState.UNREADABLE,
                                List.of(),
                                "",
                                TEXTS.text("log.read.failed", Guard.reason(failure)))));
    }

    private void take(long number, LogSnapshot snapshot) {
        if (number == latest && !snapshot.equals(log)) {
            show(snapshot);
            if (chosen.isPresent()) {
                chooseAnew(chosen.get().id(), snapshot);
            }
        }
    }

    /** The chosen entry may have been voided, or be gone. */
    private void chooseAnew(String entryId, LogSnapshot snapshot) {
        Optional<LogEntry> held = snapshot.entry(entryId);
        if (held.isPresent() || snapshot.complete()) {
            choose(held);
            return;
        }
        find(
                entryId,
                found -> {
                    if (chosen.filter(entry -> entry.id().equals(entryId)).isPresent()) {
                        choose(found);
                    }
                },
                failure -> choose(Optional.empty()));
    }

    /** Finds an entry, in the background unless it is at hand. */
    void find(String entryId, Consumer<Optional<LogEntry>> found, Consumer<Exception> failed) {
        Optional<LogEntry> held = log.entry(entryId);
        if (held.isPresent() || logFile.isEmpty()) {
            found.accept(held);
            return;
        }
        Path file = logFile.get();
        work.start(
                TEXTS.text("log.find.job", entryId),
                progress -> {
                    try (TestLog opened = TestLog.openReadOnly(file)) {
                        return opened.entry(entryId);
                    }
                },
                entry -> {
                    if (logFile.filter(file::equals).isPresent()) {
                        found.accept(entry);
                    }
                },
                failed);
    }

    void voidEntry(String entryId, String operator, String reason, Consumer<Exception> failed) {
        if (logFile.isEmpty()) {
            failed.accept(new SessionException(TEXTS.text("void.closed")));
            return;
        }
        Path file = logFile.get();
        work.start(
                TEXTS.text("void.job", entryId),
                progress -> voided(file, entryId, operator, reason),
                entry -> refresh(),
                failure -> {
                    refresh();
                    failed.accept(failure);
                });
    }

    private static LogEntry voided(Path file, String entryId, String operator, String reason)
            throws TestLogException, SessionException {
        // Opening for adding would make a log where there is none.
        TestLog.openReadOnly(file).close();
        try (TestLog log = TestLog.open(file)) {
            VerifyReport report = log.verify();
            if (!report.intact()) {
                throw new SessionException(TEXTS.text(
                        "void.broken", entryId, report.faults().get(0).sentence()));
            }
            return log.voidEntry(entryId, reason, operator);
        }
    }
}
