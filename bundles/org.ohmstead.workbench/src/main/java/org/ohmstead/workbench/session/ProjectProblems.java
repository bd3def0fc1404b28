// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.model.Problem;
import org.ohmstead.model.ProjectChecks;
import org.ohmstead.units.text.Messages;

/** What is wrong with the project and its file. */
final class ProjectProblems implements ProblemProvider {
    private static final Messages TEXTS = Messages.of(ProjectProblems.class);

    @Override
    public String name() {
        return TEXTS.text("project.name");
    }

    @Override
    public List<Problem> problems(ProjectView view) {
        List<Problem> problems = new ArrayList<>(view.fileProblems());
        problems.addAll(ProjectChecks.check(view.project(), view.today()));
        return problems;
    }
}
