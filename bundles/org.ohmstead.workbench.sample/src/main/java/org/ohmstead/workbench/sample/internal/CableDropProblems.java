// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.sample.internal;

import java.util.List;
import java.util.Locale;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.session.ProblemProvider;
import org.ohmstead.workbench.session.ProjectView;
import org.osgi.service.component.annotations.Component;

/** Warns of a supply cable that takes too much away. */
@Component
public final class CableDropProblems implements ProblemProvider {
    @Override
    public String name() {
        return "Supply cable";
    }

    @Override
    public List<Problem> problems(ProjectView view) {
        return problems(CableDrop.of(view.project()), CableDropSettings.allowedVolts());
    }

    static List<Problem> problems(CableDrop drop, double allowedVolts) {
        if (drop.volts() <= allowedVolts) {
            return List.of();
        }
        String what = String.format(
                Locale.ROOT,
                "At the %.4g A of the amplifier's fuses the supply cable takes %.2f V away, more than the %.2f V that are allowed.",
                drop.amps(),
                drop.volts(),
                allowedVolts);
        return List.of(
                new Problem(
                        Severity.WARNING,
                        "$.bench.cable",
                        what,
                        "Use a thicker or shorter cable. Whatever the cable, read the supply volts at the amplifier's terminals."));
    }
}
