// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.ohmstead.exchange.CaptureCheck;
import org.ohmstead.exchange.CaptureCheck.Finding;
import org.ohmstead.exchange.CaptureCheck.Report;
import org.ohmstead.exchange.CaptureCheck.State;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.ExchangeProgress;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.WorkProgress;

/** Checks the captures of a project, and says in words what was found. */
final class ProjectCaptures implements CaptureAudit {
    private static final Messages TEXTS = Messages.of(ProjectCaptures.class);
    private static final int MOST_TOLD = 12;
    private static final int SCALE = 1000;

    @Override
    public Result check(Path projectFolder, Path logFile, WorkProgress progress)
            throws TestLogException, ExchangeException {
        try (TestLog log = TestLog.openReadOnly(logFile)) {
            return words(CaptureCheck.run(projectFolder, log, new Told(progress)));
        }
    }

    /** Hands the progress on. */
    private record Told(WorkProgress progress) implements ExchangeProgress {
        @Override
        public void step(long done, long total, String what) {
            progress.step((int) (SCALE * done / Math.max(1, total)), SCALE, what);
        }

        @Override
        public boolean cancelled() {
            return progress.cancelled();
        }
    }

    static Result words(Report report) {
        List<String> parts = new ArrayList<>();
        for (State state :
                List.of(State.PRESENT, State.MISSING, State.CHANGED, State.ARCHIVED, State.ELSEWHERE, State.UNNAMED)) {
            int count = report.count(state);
            if (count > 0) {
                parts.add(TEXTS.text("audit.captures." + state.name(), Integer.toString(count)));
            }
        }
        String sentence = parts.isEmpty()
                ? TEXTS.text("audit.captures.none")
                : TEXTS.text("audit.captures.found", String.join(", ", parts));
        List<String> troubles = report.findings().stream()
                .filter(finding -> finding.state() == State.MISSING || finding.state() == State.CHANGED)
                .map(Finding::sentence)
                .toList();
        List<String> told = new ArrayList<>(troubles.subList(0, Math.min(MOST_TOLD, troubles.size())));
        if (troubles.size() > MOST_TOLD) {
            told.add(TEXTS.text("audit.captures.more", Integer.toString(troubles.size() - MOST_TOLD)));
        }
        return new Result(sentence, report.whole(), told);
    }
}
