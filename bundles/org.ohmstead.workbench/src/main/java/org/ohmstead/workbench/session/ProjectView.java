// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;

/**
 * The open project at one moment.
 *
 * @param folder the project's folder
 * @param project the project, with its edits
 * @param fileProblems what was noticed when its file was read or written last
 * @param log its test log as last read
 * @param today the day for which calibration dates are judged
 */
public record ProjectView(Path folder, Project project, List<Problem> fileProblems, LogSnapshot log, LocalDate today) {
    public ProjectView {
        Objects.requireNonNull(folder, "folder");
        Objects.requireNonNull(project, "project");
        fileProblems = List.copyOf(fileProblems);
        Objects.requireNonNull(log, "log");
        Objects.requireNonNull(today, "today");
    }
}
