// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.module;

import java.util.List;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.ProblemProvider;
import org.ohmstead.workbench.session.ProjectView;
import org.osgi.service.component.annotations.Component;

/** Shows modules that could not be started among the problems. */
@Component
public final class ModuleProblems implements ProblemProvider {
    private static final Messages TEXTS = Messages.of(ModuleProblems.class);

    @Override
    public String name() {
        return TEXTS.text("modules");
    }

    @Override
    public List<Problem> problems(ProjectView view) {
        return problemsWithoutProject();
    }

    @Override
    public List<Problem> problemsWithoutProject() {
        return of(ModuleFolders.found());
    }

    static List<Problem> of(List<ModuleState> modules) {
        return modules.stream()
                .filter(module -> module.fault().isPresent())
                .map(module -> new Problem(
                        Severity.WARNING,
                        TEXTS.text("problem.where", module.name()),
                        TEXTS.text("problem.what", module.name(), module.fault().orElseThrow()),
                        TEXTS.text("problem.remedy", module.file())))
                .toList();
    }
}
