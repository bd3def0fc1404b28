// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.thermal.HeatPoint;
import org.ohmstead.units.text.Messages;

/** Finds what no order and no rest can help against. */
final class Obstacles {
    private static final Messages TEXTS = Messages.of(Obstacles.class);
    private static final int HALVINGS = 60;
    private static final double CLOSE_KELVIN = 1e-6;

    private final ScheduleTask task;
    private final Plant plant;
    private final List<Obstacle> found = new ArrayList<>();

    private Obstacles(ScheduleTask task, Plant plant) {
        this.task = task;
        this.plant = plant;
    }

    static List<Obstacle> of(ScheduleTask task, Plant plant) {
        Obstacles obstacles = new Obstacles(task, plant);
        for (int point = 0; point < plant.points(); point++) {
            if (!Double.isInfinite(plant.limit[point])) {
                obstacles.look(point);
            }
        }
        return obstacles.found;
    }

    /** Returns why a job cannot be done at a state, whatever the rest. */
    static Obstacle inOrder(ScheduleTask task, Plant plant, int job, int point) {
        double excess =
                Math.max(0, new HeatRun(plant).during(plant.idleTarget.clone(), job, point) - plant.limit[point]);
        HeatPoint which = task.model().points().get(plant.pointNumber[point]);
        String id = task.jobs().get(job).id();
        return new Obstacle(
                Obstacle.Reason.ORDER,
                Optional.of(id),
                Optional.of(which.id()),
                excess,
                TEXTS.text("obstacle.order", id, which.name(), Said.three(excess)),
                TEXTS.text("obstacle.order.remedy"));
    }

    private void look(int point) {
        double limit = plant.limit[point];
        HeatPoint which = task.model().points().get(plant.pointNumber[point]);
        String whole = Said.celsius(which.limitCelsius().orElseThrow());
        String allowed =
                task.marginKelvin() > 0 ? TEXTS.text("said.less", whole, Said.three(task.marginKelvin())) : whole;
        if (limit <= 0) {
            found.add(new Obstacle(
                    Obstacle.Reason.AMBIENT,
                    Optional.empty(),
                    Optional.of(which.id()),
                    -limit,
                    TEXTS.text("obstacle.air", Said.celsius(task.ambientCelsius()), which.name(), allowed),
                    TEXTS.text("obstacle.air.remedy")));
            return;
        }
        double idle = plant.idleDirect[point];
        for (int i = 0; i < plant.weights[point].length; i++) {
            idle += plant.weights[point][i] * plant.idleTarget[plant.pointModes[point][i]];
        }
        if (idle > limit - CLOSE_KELVIN) {
            found.add(new Obstacle(
                    Obstacle.Reason.IDLE,
                    Optional.empty(),
                    Optional.of(which.id()),
                    Math.max(0, idle - limit),
                    TEXTS.text("obstacle.idle", which.name(), Said.celsius(task.ambientCelsius() + idle), allowed),
                    TEXTS.text("obstacle.idle.remedy")));
            return;
        }
        for (int job = 0; job < plant.jobs; job++) {
            look(job, point, which, allowed);
        }
    }

    private void look(int job, int point, HeatPoint which, String allowed) {
        double[] coolest = coolest(point);
        HeatRun run = new HeatRun(plant);
        double peak = run.during(coolest, job, point);
        if (peak <= plant.limit[point]) {
            return;
        }
        String id = task.jobs().get(job).id();
        double seconds = longest(coolest, job, point);
        found.add(new Obstacle(
                Obstacle.Reason.JOB,
                Optional.of(id),
                Optional.of(which.id()),
                peak - plant.limit[point],
                TEXTS.text("obstacle.step", id, which.name(), Said.celsius(task.ambientCelsius() + peak), allowed),
                seconds >= 1
                        ? TEXTS.text("obstacle.step.shorter", Said.time(Math.floor(seconds)))
                        : TEXTS.text("obstacle.step.remedy")));
    }

    /**
     * The state that no run can make cooler at a point; where a mode cools a point, no bound but what idling leads to
     * is tried.
     */
    private double[] coolest(int point) {
        double[] state = plant.idleTarget.clone();
        for (int i = 0; i < plant.weights[point].length; i++) {
            int mode = plant.pointModes[point][i];
            if (plant.weights[point][i] > 0) {
                state[mode] = plant.lowest(mode);
            }
        }
        return state;
    }

    private double longest(double[] state, int job, int point) {
        double low = 0;
        double high = plant.onSeconds[job];
        for (int i = 0; i < HALVINGS; i++) {
            double middle = low + (high - low) / 2;
            if (rises(state, job, point, middle) <= plant.limit[point]) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private double rises(double[] state, int job, int point, double seconds) {
        ExponentialSum sum = new ExponentialSum();
        double constant = plant.direct[job][point];
        for (int i = 0; i < plant.weights[point].length; i++) {
            constant += plant.weights[point][i] * plant.target[job][plant.pointModes[point][i]];
        }
        sum.reset(constant);
        for (int i = 0; i < plant.weights[point].length; i++) {
            int mode = plant.pointModes[point][i];
            sum.add(plant.weights[point][i] * (state[mode] - plant.target[job][mode]), plant.tauSeconds[mode]);
        }
        return sum.highest(seconds);
    }
}
