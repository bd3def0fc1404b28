// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.List;
import org.ohmstead.load.PlanPrecautions;
import org.ohmstead.model.Problem;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.ProblemProvider;
import org.ohmstead.workbench.session.ProjectView;
import org.osgi.service.component.annotations.Component;

/** Shows among the project's problems what the loads of its steps call for. */
@Component
public final class LoadProblems implements ProblemProvider {
    private static final Messages TEXTS = Messages.of(LoadProblems.class);

    @Override
    public String name() {
        return TEXTS.text("problems.name");
    }

    @Override
    public List<Problem> problems(ProjectView view) {
        return PlanPrecautions.of(view.project());
    }
}
