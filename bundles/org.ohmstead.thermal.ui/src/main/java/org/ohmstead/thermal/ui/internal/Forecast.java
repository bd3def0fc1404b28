// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Project;
import org.ohmstead.model.Range;
import org.ohmstead.thermal.plan.Impossible;
import org.ohmstead.thermal.plan.PlanForecast;
import org.ohmstead.thermal.plan.ReadingPowers;
import org.ohmstead.thermal.plan.Schedule;
import org.ohmstead.thermal.plan.ScheduleAnswer;
import org.ohmstead.thermal.plan.ScheduleTask;
import org.ohmstead.thermal.plan.ScheduledJob;
import org.ohmstead.thermal.plan.Scheduler;
import org.ohmstead.thermal.plan.SearchEffort;
import org.ohmstead.units.text.Messages;

/**
 * What a plan in its order will heat, draw and take.
 *
 * @param plan what each step draws and heats
 * @param readings what the log tells
 * @param answer when each step is on, or why that is impossible; empty when there is nothing to do
 * @param course when each step is on; where that is impossible, as if the plan were run all the same
 * @param traces the temperatures over that time
 */
record Forecast(
        PlanForecast plan,
        ReadingPowers readings,
        Optional<ScheduleAnswer> answer,
        Optional<Schedule> course,
        List<ForecastTrace> traces) {
    private static final Messages TEXTS = Messages.of(Forecast.class);

    Forecast {
        traces = List.copyOf(traces);
    }

    /**
     * Forecasts a project's plan in its order.
     *
     * @param cancelled asked now and then whether nobody wants it any more
     */
    static Forecast of(Project project, PartSharing sharing, ReadingPowers readings, BooleanSupplier cancelled) {
        PlanForecast plan = PlanForecast.of(project, sharing, readings);
        Optional<ScheduleAnswer> answer =
                plan.task().map(task -> Scheduler.run(inOrder(task), SearchEffort.USUAL, cancelled, done -> {}));
        Optional<Schedule> course = answer.map(each -> each instanceof Schedule schedule
                ? schedule
                : ForecastCourse.heedless(plan.task().orElseThrow()));
        List<ForecastTrace> traces = course.map(
                        each -> ForecastTrace.of(plan.task().orElseThrow(), each))
                .orElse(List.of());
        return new Forecast(plan, readings, answer, course, traces);
    }

    /**
     * What a search gives.
     *
     * @param schedule of the best order that was found; empty when there is none
     * @param forecast of the project in that order; of the plan's order when there is none
     */
    record Found(Optional<Schedule> schedule, Forecast forecast) {}

    /**
     * Looks for the order of a project's plan that takes the least time.
     *
     * @param ended asked now and then whether to end with the best so far
     * @param progress told how much is done, 0 to 1
     */
    static Found search(
            Project project,
            PartSharing sharing,
            ReadingPowers readings,
            BooleanSupplier ended,
            DoubleConsumer progress) {
        PlanForecast plan = PlanForecast.of(project, sharing, readings);
        Optional<Schedule> best = plan.task()
                .map(task -> Scheduler.run(task, SearchEffort.USUAL, ended, progress))
                .filter(Schedule.class::isInstance)
                .map(Schedule.class::cast);
        List<String> order = best.map(schedule ->
                        schedule.jobs().stream().map(ScheduledJob::id).toList())
                .orElse(List.of());
        Project ordered = best.isPresent() ? ScheduleChange.ordered(project, order) : project;
        return new Found(best, of(ordered, sharing, readings, () -> false));
    }

    private static ScheduleTask inOrder(ScheduleTask task) {
        return task.withFixedOrder(
                Optional.of(IntStream.range(0, task.jobs().size()).boxed().toList()));
    }

    Project project() {
        return plan.project();
    }

    /** Returns the schedule; empty when there is none that keeps the limits. */
    Optional<Schedule> schedule() {
        return answer.filter(Schedule.class::isInstance).map(Schedule.class::cast);
    }

    Optional<Impossible> impossible() {
        return answer.filter(Impossible.class::isInstance).map(Impossible.class::cast);
    }

    /** Returns when a step is on; empty when it is not. */
    Optional<ScheduledJob> job(String jobId) {
        return course.flatMap(each ->
                each.jobs().stream().filter(job -> job.id().equals(jobId)).findFirst());
    }

    /** Returns the ids of what is done, in order. */
    List<String> jobIds() {
        return plan.steps().stream().map(step -> step.jobId()).toList();
    }

    /** Returns the places that are watched. */
    List<ForecastPlace> places() {
        return plan.task().map(task -> ForecastPlace.of(task.model())).orElse(List.of());
    }

    /** Returns the least and the most that a place's peak may be during a job. */
    Range peakCelsius(ForecastPlace place, ScheduledJob job) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int point : place.points()) {
            low = Math.min(low, job.peakCelsius().get(point));
        }
        for (int point : place.watched(plan.task().orElseThrow().model())) {
            high = Math.max(high, job.peakCelsius().get(point));
        }
        return new Range(Math.min(low, high), high);
    }

    /** Returns what would get too warm without the rest before a job: the place that comes nearest to its limit in it. */
    String restCause(ScheduledJob job) {
        return places().stream()
                .filter(place -> place.limitCelsius().isPresent())
                .min(Comparator.comparingDouble(place -> roomKelvin(place, job).orElse(Double.POSITIVE_INFINITY)))
                .map(ForecastPlace::name)
                .orElse(TEXTS.text("forecast.limit"));
    }

    /** Returns how far a place stays below its limit during a job; empty without a limit. */
    OptionalDouble roomKelvin(ForecastPlace place, ScheduledJob job) {
        return place.limitCelsius().isPresent()
                ? OptionalDouble.of(place.limitCelsius().getAsDouble()
                        - peakCelsius(place, job).high())
                : OptionalDouble.empty();
    }
}
