// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.ohmstead.jobs.VerifiedLog;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.ProjectSession;

/**
 * What a sheet is made from, as it stood at one moment.
 *
 * @param folder of the project
 * @param project with its edits
 * @param fileProblems what was noticed when its file was read
 * @param draft whether it has edits that are not saved
 * @param log its log, whole
 */
record SheetInput(Path folder, Project project, List<Problem> fileProblems, boolean draft, LogSnapshot log) {
    SheetInput {
        Objects.requireNonNull(folder, "folder");
        Objects.requireNonNull(project, "project");
        fileProblems = List.copyOf(fileProblems);
        Objects.requireNonNull(log, "log");
    }

    static SheetInput of(ProjectSession session, LogSnapshot log) {
        return new SheetInput(session.folder(), session.project(), session.fileProblems(), session.dirty(), log);
    }

    VerifiedLog verifiedLog() {
        return new VerifiedLog(log.entries(), log.headHash());
    }

    /** Returns what the sheet shall say of the project's file; a draft says that it is one. */
    List<Problem> problems() {
        if (!draft) {
            return fileProblems;
        }
        List<Problem> problems = new ArrayList<>(fileProblems);
        problems.add(new Problem(Severity.WARNING, "$", Texts.say("draft.what"), Texts.say("draft.remedy")));
        return problems;
    }
}
