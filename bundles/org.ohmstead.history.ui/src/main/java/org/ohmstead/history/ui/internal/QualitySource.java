// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.workbench.session.WorkProgress;

/** Where the values of check standards are read and written; on any thread but the user interface's. */
interface QualitySource {
    /**
     * Returns the check standards of a project with what their values say, in the project's order.
     *
     * @param folder of the project
     * @param today the day for which reminders are made
     * @throws TestLogException when the log cannot be read
     */
    List<CheckView> read(Project project, Path folder, LocalDate today, WorkProgress progress) throws TestLogException;

    /**
     * A value that was typed.
     *
     * @param project whose check standard it is
     * @param revision hash of the project's file
     * @param folder of the project
     * @param standard which check standard
     * @param value in its unit
     * @param operator who measured
     */
    record Typed(
            Project project, String revision, Path folder, CheckStandard standard, double value, String operator) {}

    /**
     * Writes a value into the log of its project.
     *
     * @throws TestLogException when it cannot be written
     */
    void append(Typed typed) throws TestLogException;
}
