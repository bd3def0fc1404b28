// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.nio.file.Path;
import java.util.Optional;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.Reading;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.SessionException;
import org.ohmstead.workbench.session.WorkProgress;

/**
 * Reads two readings and their captures, away from the user interface.
 *
 * @param logFile the test log
 * @param capturesFolder the project's folder of captures
 * @param first id of the one
 * @param second id of the other
 * @param channel name of the channel to look at; empty, or of a channel that a reading has not, for its weakest
 */
record PairLoading(Path logFile, Path capturesFolder, String first, String second, String channel)
        implements BackgroundWork.Task<PairLoading.Loaded> {
    private static final Messages TEXTS = Messages.of(PairLoading.class);
    private static final int STEPS = 4;

    /** Both readings. */
    record Loaded(PairSide first, PairSide second) {}

    @Override
    public Loaded run(WorkProgress progress) throws TestLogException, SessionException {
        progress.step(0, STEPS, TEXTS.text("pair.reading.step", first, second));
        LogEntry one;
        LogEntry other;
        try (TestLog log = TestLog.openReadOnly(logFile)) {
            one = entry(log, first);
            other = entry(log, second);
        }
        progress.stopIfCancelled();
        progress.step(1, STEPS, TEXTS.text("pair.analysing", one.id()));
        PairSide left = side(one);
        progress.stopIfCancelled();
        progress.step(2, STEPS, TEXTS.text("pair.analysing", other.id()));
        return new Loaded(left, side(other));
    }

    private static LogEntry entry(TestLog log, String id) throws TestLogException, SessionException {
        LogEntry entry = log.entry(id).orElseThrow(() -> new SessionException(TEXTS.text("pair.noEntry", id)));
        if (entry.reading().isEmpty()) {
            throw new SessionException(TEXTS.text("pair.noReading", entry.id()));
        }
        return entry;
    }

    private PairSide side(LogEntry entry) {
        Reading reading = entry.reading().orElseThrow();
        int index = PairWaves.channel(reading, channel);
        Optional<CaptureUsed> used =
                PairWaves.nearest(reading, reading.channels().get(index));
        if (used.isEmpty()) {
            return new PairSide(entry, reading, index, Optional.empty(), TEXTS.text("pair.noCaptures", entry.id()));
        }
        try {
            PairWave wave = PairWaves.read(reading, index, used.get(), capturesFolder);
            return new PairSide(entry, reading, index, Optional.of(wave), "");
        } catch (SessionException | CaptureException e) {
            return new PairSide(entry, reading, index, Optional.empty(), entry.id() + ": " + e.getMessage());
        }
    }
}
