// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.List;
import org.ohmstead.measure.engine.Catalog;
import org.ohmstead.model.Problem;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.ProblemProvider;
import org.ohmstead.workbench.session.ProjectView;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;

/** Shows among the problems what is wrong with measurements, bench drivers and precautions. */
@Component
public final class PluginProblems implements ProblemProvider {
    private static final Messages TEXTS = Messages.of(PluginProblems.class);

    private final Catalog catalog;

    /** Makes the provider. */
    @Activate
    public PluginProblems(@Reference Catalog catalog) {
        this.catalog = catalog;
    }

    @Override
    public String name() {
        return TEXTS.text("problems.name");
    }

    @Override
    public List<Problem> problems(ProjectView view) {
        return catalog.view().problems();
    }

    @Override
    public List<Problem> problemsWithoutProject() {
        return catalog.view().problems();
    }
}
