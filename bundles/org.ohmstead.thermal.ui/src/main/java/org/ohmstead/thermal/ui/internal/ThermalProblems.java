// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.List;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.thermal.plan.ThermalPrecautions;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.ProblemProvider;
import org.ohmstead.workbench.session.ProjectView;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;

/** Shows among the project's problems what its plan would do to supply, fuses, loads and temperatures. */
@Component
public final class ThermalProblems implements ProblemProvider {
    private static final Messages TEXTS = Messages.of(ThermalProblems.class);

    private final PartSharing sharing;

    /** Makes the provider; {@code sharing} tells how the power of a load falls on its parts. */
    @Activate
    public ThermalProblems(@Reference PartSharing sharing) {
        this.sharing = sharing;
    }

    @Override
    public String name() {
        return TEXTS.text("problems.name");
    }

    @Override
    public List<Problem> problems(ProjectView view) {
        Project project = view.project();
        if (project.plan().isEmpty()) {
            return List.of();
        }
        Forecast forecast = Forecast.of(project, sharing, ForecastReadings.of(view.log(), project), () -> false);
        return ThermalPrecautions.of(forecast.plan(), forecast.answer());
    }
}
