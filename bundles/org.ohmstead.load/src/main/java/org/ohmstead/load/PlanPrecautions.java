// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.ProjectChecks;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.units.text.Messages;

/** What is to be said about the loads of a whole plan, each thing once however many steps have it. */
public final class PlanPrecautions {
    private static final Messages TEXTS = Messages.of(PlanPrecautions.class);

    private PlanPrecautions() {}

    /**
     * Returns the precautions of all steps. Of several that are alike but for the step and its power it returns the gravest, then the last.
     * What {@link ProjectChecks} says of a plan is left out: loads that do not exist, and loads below the lowest that the maker allows.
     *
     * @param project the test
     */
    public static List<Problem> of(Project project) {
        Map<List<String>, Problem> problems = new LinkedHashMap<>();
        List<Integer> unpowered = new ArrayList<>();
        for (int index = 0; index < project.plan().size(); index++) {
            Step step = project.plan().get(index);
            String stepPath = "$.plan[" + index + "]";
            for (Problem problem : LoadPrecautions.check(project, step, OptionalDouble.empty())) {
                if (problem.where().equals(stepPath) && problem.severity() == Severity.NOTE) {
                    unpowered.add(index);
                } else if (!problem.where().startsWith(stepPath)) {
                    problems.merge(
                            List.of(problem.where(), problem.remedy()),
                            problem,
                            (one, other) -> one.severity().compareTo(other.severity()) < 0 ? one : other);
                }
            }
        }
        List<Problem> all = new ArrayList<>(problems.values());
        if (!unpowered.isEmpty()) {
            all.add(unpowered(project, unpowered));
        }
        return List.copyOf(all);
    }

    private static Problem unpowered(Project project, List<Integer> steps) {
        String first = project.plan().get(steps.get(0)).id();
        String what = steps.size() == 1
                ? TEXTS.text("load.unpowered", first)
                : TEXTS.text("load.unpoweredSteps", Integer.toString(steps.size()), first);
        return new Problem(
                Severity.NOTE, "$.plan[" + steps.get(0) + "]", what, TEXTS.text("load.unpoweredStepsRemedy"));
    }
}
