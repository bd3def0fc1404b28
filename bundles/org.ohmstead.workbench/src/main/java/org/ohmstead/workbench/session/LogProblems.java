// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.units.text.Messages;

/** What is wrong with the test log as a whole. */
final class LogProblems implements ProblemProvider {
    private static final Messages TEXTS = Messages.of(LogProblems.class);

    @Override
    public String name() {
        return TEXTS.text("log.name");
    }

    @Override
    public List<Problem> problems(ProjectView view) {
        return switch (view.log().state()) {
            case NONE, READING -> List.of();
            case WHOLE -> whole(view.log());
            case BROKEN ->
                List.of(new Problem(
                        Severity.ERROR, TestLog.FILE_NAME, view.log().sentence(), TEXTS.text("log.broken.remedy")));
            case UNREADABLE ->
                List.of(new Problem(
                        Severity.ERROR, TestLog.FILE_NAME, view.log().sentence(), TEXTS.text("log.unreadable.remedy")));
        };
    }

    private static List<Problem> whole(LogSnapshot log) {
        List<Problem> problems = new ArrayList<>();
        if (log.older() > 0) {
            problems.add(leftOut(log));
        }
        if (!log.clock().isEmpty()) {
            problems.add(new Problem(Severity.NOTE, TestLog.FILE_NAME, log.clock(), TEXTS.text("log.clock.remedy")));
        }
        return problems;
    }

    private static Problem leftOut(LogSnapshot log) {
        return new Problem(
                Severity.NOTE,
                TestLog.FILE_NAME,
                TEXTS.text("log.older", Integer.toString(LogSnapshot.MOST_ENTRIES), Long.toString(log.older())),
                TEXTS.text("log.older.remedy"));
    }
}
