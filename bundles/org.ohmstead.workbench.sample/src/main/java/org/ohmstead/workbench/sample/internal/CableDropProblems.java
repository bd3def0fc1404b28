// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.sample.internal;

import java.util.List;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.session.ProblemProvider;
import org.ohmstead.workbench.session.ProjectView;
import org.osgi.service.component.annotations.Component;

/** Warns of a supply cable that takes too much away. */
@Component
public final class CableDropProblems implements ProblemProvider {
    private static final Messages TEXTS = Messages.of(CableDropProblems.class);

    @Override
    public String name() {
        return TEXTS.text("cable.name");
    }

    @Override
    public List<Problem> problems(ProjectView view) {
        return problems(CableDrop.of(view.project()), CableDropSettings.allowedVolts());
    }

    static List<Problem> problems(CableDrop drop, double allowedVolts) {
        if (drop.volts() <= allowedVolts) {
            return List.of();
        }
        String what = TEXTS.text(
                "problem.drop",
                Numbers.format("%.4g", drop.amps()),
                Numbers.format("%.2f", drop.volts()),
                Numbers.format("%.2f", allowedVolts));
        return List.of(new Problem(Severity.WARNING, "$.bench.cable", what, TEXTS.text("problem.drop.remedy")));
    }
}
