// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.thermal.HeatModel;
import org.ohmstead.thermal.plan.HeatJob;
import org.ohmstead.thermal.plan.Schedule;
import org.ohmstead.thermal.plan.ScheduleTask;
import org.ohmstead.thermal.plan.ScheduledJob;
import org.ohmstead.units.text.Messages;

/** A plan as it would go if it were run in its order all the same, without any rest but those that the user asked for. */
final class ForecastCourse {
    private static final Messages TEXTS = Messages.of(ForecastCourse.class);

    private final ScheduleTask task;
    private final HeatModel model;
    private final double[] state;
    private final double[] idle;
    private final List<ScheduledJob> placed = new ArrayList<>();
    private double seconds;
    private double changes;
    private double rests;
    private double joules;

    private ForecastCourse(ScheduleTask task) {
        this.task = task;
        model = task.model();
        state = plain(task.startState());
        idle = plain(task.idleWatts());
    }

    /** Returns the schedule of a task in the order of its jobs, whatever gets too hot. */
    static Schedule heedless(ScheduleTask task) {
        ForecastCourse course = new ForecastCourse(task);
        for (int job = 0; job < task.jobs().size(); job++) {
            course.run(job);
        }
        return course.schedule();
    }

    private void run(int number) {
        HeatJob job = task.jobs().get(number);
        double change = number == 0
                ? task.changes().firstSeconds().get(0)
                : task.changes().seconds().get(number - 1).get(number);
        double rest = job.leastRestSeconds();
        model.advance(state, idle, change + rest);
        double start = seconds + change + rest;
        double[] watts = plain(job.watts());
        placed.add(new ScheduledJob(
                number,
                job.id(),
                change,
                rest,
                start,
                start + job.onSeconds(),
                rest > 0 ? ScheduledJob.Cause.WISH : ScheduledJob.Cause.NONE,
                Optional.empty(),
                peaks(job, watts)));
        model.advance(state, watts, job.onSeconds());
        seconds = start + job.onSeconds();
        changes += change;
        rests += rest;
        joules += (change + rest) * task.idleSupplyWatts() + job.onSeconds() * job.supplyWatts();
    }

    private List<Double> peaks(HeatJob job, double[] watts) {
        List<Double> peaks = new ArrayList<>();
        for (int point = 0; point < model.points().size(); point++) {
            double ripple =
                    job.rippleKelvin().getOrDefault(model.points().get(point).id(), 0.0);
            peaks.add(task.ambientCelsius()
                    + model.peak(point, state, watts, job.onSeconds()).riseKelvin()
                    + ripple);
        }
        return peaks;
    }

    private Schedule schedule() {
        return new Schedule(
                placed,
                seconds,
                seconds - changes - rests,
                changes,
                rests,
                joules,
                seconds,
                false,
                false,
                Schedule.Ending.FIXED_ORDER,
                TEXTS.text("forecast.heedless"));
    }

    private static double[] plain(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
