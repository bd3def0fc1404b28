// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.nio.file.Path;
import java.util.List;
import org.ohmstead.workbench.session.WorkProgress;

/** Checks the captures of a project against the hashes that its log keeps; in the background. */
@FunctionalInterface
interface CaptureAudit {
    /**
     * What was found.
     *
     * @param sentence how many captures are as they were logged, and how many not
     * @param whole whether all of them are
     * @param troubles what is wrong with the others, a sentence each
     */
    record Result(String sentence, boolean whole, List<String> troubles) {
        public Result {
            troubles = List.copyOf(troubles);
        }
    }

    /**
     * Checks.
     *
     * @param projectFolder the project's folder
     * @param logFile its log
     * @throws Exception when it could not be done; the message is shown
     */
    Result check(Path projectFolder, Path logFile, WorkProgress progress) throws Exception;
}
