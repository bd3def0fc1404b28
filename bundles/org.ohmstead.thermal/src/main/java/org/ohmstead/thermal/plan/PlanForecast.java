// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Step;

/**
 * What the steps of a plan will draw and heat, as a task for {@link Scheduler}.
 *
 * <p>The model holds the amplifier with the most heat and the highest thermal resistance that its ranges allow, once
 * for each of the least, middle and greatest heat capacity (points {@code case...} and {@code device...}), once more
 * with the middle of everything and no limit (ending {@code .likely}); the hottest piece of each kind of load resistor;
 * and the cable. What is not known is estimated or left out, and {@code notes} says which.
 *
 * @param project the test
 * @param steps what each job draws and heats, in the order of the task's jobs: the warm-up first when there is one,
 *     then the plan
 * @param task what is to be scheduled; empty when the plan is
 * @param deviceKelvinPerWatt thermal resistance from the case to the devices that was reckoned with, at the most; empty
 *     when not known
 * @param problems what is wrong with currents and data, with paths into the project
 * @param notes what was assumed or left out, in whole sentences
 */
public record PlanForecast(
        Project project,
        List<StepForecast> steps,
        Optional<ScheduleTask> task,
        OptionalDouble deviceKelvinPerWatt,
        List<Problem> problems,
        List<String> notes) {
    /** The id of the warm-up's job. */
    public static final String WARM_UP = "warm-up";

    public PlanForecast {
        Require.present(project, "project");
        steps = List.copyOf(steps);
        Require.present(task, "task");
        Require.present(deviceKelvinPerWatt, "deviceKelvinPerWatt");
        problems = List.copyOf(problems);
        notes = List.copyOf(notes);
    }

    /**
     * Forecasts a plan.
     *
     * @param project the test; steps whose load does not exist are left out and said
     * @param sharing how power falls on the parts of a load
     * @param known what readings tell of a step; empty when they do not
     */
    public static PlanForecast of(Project project, PartSharing sharing, Function<Step, Optional<KnownPower>> known) {
        Require.present(project, "project");
        Require.present(sharing, "sharing");
        Require.present(known, "known");
        return new ForecastMaker(project, sharing, known).make();
    }

    /** Forecasts a plan of which there are no readings. */
    public static PlanForecast of(Project project, PartSharing sharing) {
        return of(project, sharing, step -> Optional.empty());
    }

    /** Returns what a job draws and heats; empty when there is no such job. */
    public Optional<StepForecast> step(String jobId) {
        return steps.stream().filter(step -> step.jobId().equals(jobId)).findFirst();
    }
}
