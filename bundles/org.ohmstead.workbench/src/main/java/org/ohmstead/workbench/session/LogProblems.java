// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.List;
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
            case NONE, READING, WHOLE -> List.of();
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
}
