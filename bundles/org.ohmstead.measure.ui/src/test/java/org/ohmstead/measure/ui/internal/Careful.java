// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.List;
import org.ohmstead.model.Precaution;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.model.StopLimit;

/** Warns of the first step and forbids the second. */
final class Careful implements Precaution {
    static final String WARNING = "The load \"8ohm\" was not checked this year.";
    static final String ERROR = "The fuse at the amplifier is too small for this step.";

    @Override
    public String id() {
        return "org.example.careful";
    }

    @Override
    public List<Problem> check(Project project, Step step) {
        int place = project.plan().indexOf(step);
        if (place == 0) {
            return List.of(new Problem(Severity.WARNING, "$.plan[0].loadId", WARNING, "Measure it first."));
        }
        return place == 1
                ? List.of(new Problem(Severity.ERROR, "$.plan[1]", ERROR, "Put a larger one in."))
                : List.of();
    }

    @Override
    public List<StopLimit> stopLimits(Project project, Step step) {
        return List.of(
                new StopLimit(StopLimit.Quantity.CASE_CELSIUS, 80, "The maker allows no more."),
                new StopLimit(StopLimit.Quantity.SUPPLY_AMPS, 60, "The fuses would blow."));
    }
}
