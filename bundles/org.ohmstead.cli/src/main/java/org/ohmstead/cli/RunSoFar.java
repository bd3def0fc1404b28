// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.ohmstead.thermal.HeatModel;
import org.ohmstead.thermal.HeatPoint;
import org.ohmstead.thermal.plan.HeatJob;
import org.ohmstead.thermal.plan.Reschedule;
import org.ohmstead.thermal.plan.ScheduleTask;
import org.ohmstead.thermal.plan.StateEstimate;
import org.ohmstead.thermal.plan.WatchedPlace;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Option;

/** Where a run stands that has begun, as options: what is done, and how warm things are. */
final class RunSoFar {
    /** Standard uncertainty of a temperature read by hand; common practice, no source. */
    private static final double READING_KELVIN = 1;

    private static final double COLDEST_CELSIUS = -60;
    private static final double HOTTEST_CELSIUS = 1000;
    private static final double LONGEST_SECONDS = 1e6;

    @Option(names = "--done", paramLabel = "STEP", split = ",", descriptionKey = "run.so.far.done")
    private List<String> done;

    @Option(names = "--rested-seconds", paramLabel = "S", descriptionKey = "run.so.far.rested-seconds")
    private String restedSeconds;

    @Option(names = "--measured", paramLabel = "POINT=T", split = ",", descriptionKey = "run.so.far.measured")
    private List<String> measured;

    /** Returns the task of what is left from the state that things are in now; empty when nothing is left. */
    Optional<ScheduleTask> left(ScheduleTask whole) throws InputException {
        List<String> doneIds =
                done == null ? List.of() : done.stream().map(String::strip).toList();
        checkDone(whole, doneIds);
        if (doneIds.isEmpty() && restedSeconds != null) {
            throw new InputException(Texts.of("soFar.rested"));
        }
        double rested = restedSeconds == null
                ? 0
                : Quantities.within(restedSeconds, Unit.SECOND, 0, LONGEST_SECONDS, "--rested-seconds");
        List<Double> reckoned = Reschedule.stateAfter(whole, stretches(whole, doneIds, rested));
        List<Double> state = reckoned;
        if (measured != null) {
            state = StateEstimate.of(
                            whole.model(), reckoned, whole.idleWatts(), whole.ambientCelsius(), readings(whole.model()))
                    .state();
        }
        return Reschedule.remaining(whole, doneIds, state);
    }

    private static void checkDone(ScheduleTask whole, List<String> ids) throws InputException {
        List<String> known = whole.jobs().stream().map(HeatJob::id).toList();
        for (String id : ids) {
            if (!known.contains(id)) {
                throw new InputException(Texts.of("soFar.noStep", id, Texts.some(known)));
            }
        }
        if (ids.stream().distinct().count() < ids.size()) {
            throw new InputException(Texts.of("soFar.twice"));
        }
    }

    /** What was on for how long, without rests, which nobody noted: things are then taken as warmer than they are. */
    private static List<Reschedule.Stretch> stretches(ScheduleTask whole, List<String> ids, double rested) {
        List<String> known = whole.jobs().stream().map(HeatJob::id).toList();
        List<Reschedule.Stretch> stretches = new ArrayList<>();
        int last = -1;
        for (String id : ids) {
            int job = known.indexOf(id);
            double change = last < 0
                    ? whole.changes().firstSeconds().get(job)
                    : whole.changes().seconds().get(last).get(job);
            stretches.add(new Reschedule.Stretch(Optional.empty(), change));
            stretches.add(new Reschedule.Stretch(
                    Optional.of(id), whole.jobs().get(job).onSeconds()));
            last = job;
        }
        stretches.add(new Reschedule.Stretch(Optional.empty(), rested));
        return stretches;
    }

    private List<StateEstimate.Measured> readings(HeatModel model) throws InputException {
        List<StateEstimate.Measured> readings = new ArrayList<>();
        List<String> seen = new ArrayList<>();
        for (String text : measured) {
            String[] halves = text.split("=", -1);
            String name = halves[0].strip();
            if (halves.length != 2 || name.isEmpty()) {
                throw new InputException(Texts.of("soFar.notation", text));
            }
            if (seen.contains(name)) {
                throw new InputException(Texts.of("soFar.pointTwice", name));
            }
            seen.add(name);
            double celsius =
                    Quantities.within(halves[1], Unit.CELSIUS, COLDEST_CELSIUS, HOTTEST_CELSIUS, "--measured " + name);
            List<String> points = model.points().stream()
                    .map(HeatPoint::id)
                    .filter(id -> WatchedPlace.key(id).equals(name))
                    .toList();
            if (points.isEmpty()) {
                throw new InputException(Texts.of(
                        "soFar.noPoint",
                        name,
                        model.points().stream()
                                .map(point -> WatchedPlace.key(point.id()))
                                .distinct()
                                .collect(Collectors.joining(", "))));
            }
            points.forEach(point -> readings.add(new StateEstimate.Measured(point, celsius, READING_KELVIN)));
        }
        return readings;
    }
}
