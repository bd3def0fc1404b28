// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.List;
import org.ohmstead.model.Precaution;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Step;
import org.ohmstead.model.StopLimit;

/** Says one thing about one step. */
record FixedPrecaution(Problem problem, String stepId) implements Precaution {
    @Override
    public String id() {
        return "org.example.fixed";
    }

    @Override
    public List<Problem> check(Project project, Step step) {
        return step.id().equals(stepId) ? List.of(problem) : List.of();
    }

    @Override
    public List<StopLimit> stopLimits(Project project, Step step) {
        return List.of();
    }
}
