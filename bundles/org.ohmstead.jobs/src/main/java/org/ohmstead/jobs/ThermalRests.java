// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.LongSupplier;
import java.util.stream.Collectors;
import org.ohmstead.measure.engine.ItemState;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.PlanState;
import org.ohmstead.measure.engine.Rests;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.thermal.plan.ChangeOvers;
import org.ohmstead.thermal.plan.HeatJob;
import org.ohmstead.thermal.plan.PlanForecast;
import org.ohmstead.thermal.plan.ReadingPowers;
import org.ohmstead.thermal.plan.Reschedule;
import org.ohmstead.thermal.plan.Schedule;
import org.ohmstead.thermal.plan.ScheduleTask;
import org.ohmstead.thermal.plan.Scheduler;
import org.ohmstead.thermal.plan.SearchEffort;
import org.ohmstead.thermal.plan.StateEstimate;
import org.ohmstead.thermal.plan.WatchedPlace;

/** The rest before an item: as short as keeps all below its limits when the step goes as forecast, from the state that things are in now. */
final class ThermalRests implements Rests {
    /** Standard uncertainty of a case's temperature as a bench reads it; common practice, no source. */
    private static final double READ_KELVIN = 1;

    private static final String CASE = "case";
    private static final Duration REMEMBERED = Duration.ofHours(24);
    private static final double MILLIS_PER_SECOND = 1000;
    private static final double LEEWAY_SECONDS = LatestEnds.LEEWAY.toMillis() / MILLIS_PER_SECOND;

    private final ScheduleTask task;
    private final List<LogEntry> entries;
    private final LatestEnds ends;
    private final Map<String, Instant> firstSeen = new HashMap<>();

    /**
     * A step that was on.
     *
     * @param end the latest moment at which it can have ended
     * @param timed whether it ended just then, so that it was on no longer than since another such one before it
     */
    private record On(HeatJob job, Instant end, boolean timed, OptionalDouble caseCelsius) {}

    /** How warm everything is, and since when nothing is on; empty when nothing was. */
    private record Warmth(List<Double> state, Optional<Instant> offSince) {}

    private ThermalRests(ScheduleTask task, List<LogEntry> entries, LatestEnds ends) {
        this.task = task;
        this.entries = entries;
        this.ends = ends;
    }

    /**
     * Makes the rests of a project.
     *
     * @param clock the computer's, which may be set at any time
     * @param steadyNanos nanoseconds of one that nobody sets
     */
    static Rests of(
            Project project, PartSharing sharing, List<LogEntry> entries, Clock clock, LongSupplier steadyNanos) {
        ReadingPowers powers = ReadingPowers.of(LogTrust.usedReadings(entries, project));
        return PlanForecast.of(project, sharing, powers)
                .task()
                .<Rests>map(task ->
                        new ThermalRests(task, entries, new LatestEnds(List.copyOf(entries), clock, steadyNanos)))
                .orElse(Rests.NONE);
    }

    @Override
    public synchronized Duration before(PlanItem item, PlanState state) {
        Optional<HeatJob> job = job(item.stepId());
        if (job.isEmpty()) {
            return Duration.ZERO;
        }
        List<LogEntry> known = List.copyOf(entries);
        Instant now = ends.see(known);
        Warmth warmth = warmth(past(known, state, now), now);
        double wishSeconds = warmth.offSince()
                .map(since -> Math.max(0, job.get().leastRestSeconds() - seconds(since, now)))
                .orElse(0.0);
        ScheduleTask alone = new ScheduleTask(
                task.model(),
                task.ambientCelsius(),
                task.marginKelvin(),
                List.of(job.get().withLeastRestSeconds(wishSeconds)),
                task.idleWatts(),
                task.idleSupplyWatts(),
                ChangeOvers.none(1),
                List.of(),
                warmth.state(),
                Optional.of(List.of(0)));
        // What is too hot whatever the rests is for the precautions to refuse.
        return Scheduler.run(alone, SearchEffort.USUAL, () -> false, done -> {}) instanceof Schedule schedule
                ? Duration.ofMillis((long)
                        Math.ceil(MILLIS_PER_SECOND * schedule.jobs().get(0).restSeconds()))
                : Duration.ZERO;
    }

    private Optional<HeatJob> job(String stepId) {
        return task.jobs().stream().filter(job -> job.id().equals(stepId)).findFirst();
    }

    private static double seconds(Instant from, Instant to) {
        return Math.max(0, Duration.between(from, to).toNanos() / 1e9);
    }

    /** What was on, the earliest first: by the log, and what was done since without standing in the list of entries. */
    private List<On> past(List<LogEntry> known, PlanState state, Instant now) {
        List<Instant> latest = ends.of(known);
        List<On> past = new ArrayList<>();
        for (int at = 0; at < known.size(); at++) {
            LogEntry entry = known.get(at);
            Instant end = latest.get(at);
            if (Duration.between(end, now).compareTo(REMEMBERED) < 0) {
                entry.figures()
                        .filter(figures -> figures.driver().kind() == BenchKind.REAL)
                        .flatMap(figures -> on(figures, end, ends.exact(entry)))
                        .ifPresent(past::add);
            }
        }
        Set<String> ids = known.stream().map(LogEntry::id).collect(Collectors.toSet());
        for (ItemState each : state.items()) {
            for (String id : each.entryIds()) {
                if (id.charAt(0) == EntryKind.FIGURES.idPrefix() && !ids.contains(id)) {
                    Instant end = firstSeen.computeIfAbsent(id, any -> now);
                    job(each.item().stepId())
                            .ifPresent(job -> past.add(new On(job, end, false, OptionalDouble.empty())));
                }
            }
        }
        // Within a chain the moments never go back, and what has the same moment keeps its order.
        past.sort(Comparator.comparing(On::end));
        return past;
    }

    private Optional<On> on(MeasuredFigures figures, Instant end, boolean timed) {
        return job(figures.stepId())
                .map(job -> new On(job, end, timed, figures.conditions().caseCelsius()));
    }

    private Warmth warmth(List<On> past, Instant now) {
        List<Double> state = task.startState();
        Optional<Instant> offSince = Optional.empty();
        boolean timed = false;
        for (On each : past) {
            double onSeconds = each.job().onSeconds();
            if (offSince.isPresent()) {
                double elapsed = seconds(offSince.get(), each.end());
                onSeconds = timed && each.timed() ? Math.min(onSeconds, elapsed + LEEWAY_SECONDS) : onSeconds;
                state = after(state, Optional.empty(), Math.max(0, elapsed - onSeconds));
            }
            timed = each.timed();
            state = after(state, Optional.of(each.job().id()), onSeconds);
            state = corrected(state, each);
            offSince = Optional.of(each.end());
        }
        return new Warmth(
                offSince.isEmpty() ? state : after(state, Optional.empty(), seconds(offSince.get(), now)), offSince);
    }

    private List<Double> after(List<Double> state, Optional<String> jobId, double onSeconds) {
        return Reschedule.stateAfter(task.withStartState(state), List.of(new Reschedule.Stretch(jobId, onSeconds)));
    }

    private List<Double> corrected(List<Double> state, On on) {
        if (on.caseCelsius().isEmpty()) {
            return state;
        }
        List<StateEstimate.Measured> measured = task.model().points().stream()
                .filter(point -> WatchedPlace.key(point.id()).equals(CASE))
                .map(point ->
                        new StateEstimate.Measured(point.id(), on.caseCelsius().getAsDouble(), READ_KELVIN))
                .toList();
        return StateEstimate.of(task.model(), state, on.job().watts(), task.ambientCelsius(), measured)
                .state();
    }
}
