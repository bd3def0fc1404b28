// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.units.text.Messages;

/** Writes an order down as a schedule, with all points of the model. */
final class ScheduleMaker {
    private static final Messages TEXTS = Messages.of(ScheduleMaker.class);
    private static final double SAME_SECONDS = 1e-3;

    private final ScheduleTask task;
    private final Plant plant;

    ScheduleMaker(ScheduleTask task, Plant plant) {
        this.task = task;
        this.plant = plant;
    }

    /** What the search knows beside the order. */
    record Finding(double lowerBoundSeconds, boolean proven, Schedule.Ending ending) {}

    ScheduleAnswer make(int[] order, Finding finding) {
        HeatRun run = new HeatRun(plant);
        double[] state = plant.start.clone();
        OrderTable table = new OrderTable(task);
        List<ScheduledJob> jobs = new ArrayList<>();
        double time = 0;
        double changes = 0;
        double rests = 0;
        double energy = 0;
        int last = -1;
        for (int job : order) {
            double change = table.change(last, job);
            run.change(state, change);
            double rest = run.restSeconds(state, job, table.leastRest[job]);
            if (Double.isNaN(rest)) {
                return new Impossible(List.of(Obstacles.inOrder(task, plant, job, run.forcing())));
            }
            run.rest(state, rest);
            int forcing = rest > table.leastRest[job] ? nearest(run, state, job) : -1;
            double start = time + change + rest;
            jobs.add(placed(job, change, rest, start, forcing, peaks(run, state, job)));
            run.on(state, job);
            time = start + plant.onSeconds[job];
            changes += change;
            rests += rest;
            energy += (change + rest) * task.idleSupplyWatts()
                    + plant.onSeconds[job] * task.jobs().get(job).supplyWatts();
            last = job;
        }
        double bound = Math.min(time, finding.lowerBoundSeconds());
        boolean proven = finding.proven() || time <= bound + SAME_SECONDS;
        return new Schedule(
                jobs,
                time,
                table.onSum,
                changes,
                rests,
                energy,
                bound,
                proven,
                plant.fallsMonotonically(),
                finding.ending(),
                message(time, changes, rests, bound, proven));
    }

    private ScheduledJob placed(int job, double change, double rest, double start, int forcing, List<Double> peaks) {
        ScheduledJob.Cause cause =
                forcing >= 0 ? ScheduledJob.Cause.LIMIT : rest > 0 ? ScheduledJob.Cause.WISH : ScheduledJob.Cause.NONE;
        return new ScheduledJob(
                job,
                task.jobs().get(job).id(),
                change,
                rest,
                start,
                start + plant.onSeconds[job],
                cause,
                forcing < 0
                        ? Optional.empty()
                        : Optional.of(task.model().points().get(forcing).id()),
                peaks);
    }

    private List<Double> peaks(HeatRun run, double[] state, int job) {
        List<Double> peaks = new ArrayList<>();
        for (int point = 0; point < plant.points(); point++) {
            peaks.add(task.ambientCelsius() + run.during(state, job, point));
        }
        return peaks;
    }

    /** Returns the point that comes nearest to its limit in a job: after the shortest rest it is the one that forced it. */
    private int nearest(HeatRun run, double[] state, int job) {
        int nearest = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int point = 0; point < plant.points(); point++) {
            double room = plant.limit[point] - run.highest(state, job, point);
            if (room < least) {
                least = room;
                nearest = point;
            }
        }
        return nearest;
    }

    private static String message(double time, double changes, double rests, double bound, boolean proven) {
        String key = proven ? "schedule.proven" : "schedule.bound";
        String gain = Said.three(100 * (1 - bound / time));
        return TEXTS.text(key, Said.time(time), Said.time(changes), Said.time(rests), Said.time(bound), gain);
    }
}
