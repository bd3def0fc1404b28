// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.List;
import java.util.Locale;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.testlog.TestLog;

/** What is wrong with the test log as a whole. */
final class LogProblems implements ProblemProvider {
    @Override
    public String name() {
        return "Test log";
    }

    @Override
    public List<Problem> problems(ProjectView view) {
        return switch (view.log().state()) {
            case NONE, READING -> List.of();
            case WHOLE -> view.log().older() > 0 ? List.of(leftOut(view.log())) : List.of();
            case BROKEN -> List.of(new Problem(
                    Severity.ERROR,
                    TestLog.FILE_NAME,
                    view.log().sentence(),
                    "Restore the log from a backup; nothing is added to it until then."));
            case UNREADABLE -> List.of(new Problem(
                    Severity.ERROR,
                    TestLog.FILE_NAME,
                    view.log().sentence(),
                    "Readings cannot be shown or added until the log can be read."));
        };
    }

    private static Problem leftOut(LogSnapshot log) {
        return new Problem(
                Severity.NOTE,
                TestLog.FILE_NAME,
                String.format(
                        Locale.ROOT,
                        "Curves, sheet and problems in the workbench use the newest %d entries of the test log; %d older ones"
                                + " are left out.",
                        LogSnapshot.MOST_ENTRIES,
                        log.older()),
                "The test log shows and finds all of them. Begin a new project for a new amplifier, so that a log stays"
                        + " about one.");
    }
}
