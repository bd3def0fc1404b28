// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.ohmstead.thermal.HeatModel;

/**
 * What has to be done, and what must not get too hot meanwhile. Start from {@link #of} and change what matters.
 *
 * @param model what gets warm; its points with a limit are kept below it. Where a quantity is known only as a range,
 *     put a copy of the body for each end of the range into the model: all of them are kept
 * @param ambientCelsius temperature of the air, -60 to 120
 * @param marginKelvin how far every point is to stay below its limit, at least 0
 * @param jobs what to do, at least one
 * @param idleWatts heat of each source during change-overs and rests, in watts, each at least 0
 * @param idleSupplyWatts power taken from the supply then, in watts, at least 0; counts for the energy only
 * @param changes how long the change-overs take; idle powers are on meanwhile
 * @param precedence orders that must be kept; without a ring
 * @param startState state of the model at the beginning, a number for each mode; empty for cold
 * @param fixedOrder the order to keep to, each job's number once; empty to look for the best
 */
public record ScheduleTask(
        HeatModel model,
        double ambientCelsius,
        double marginKelvin,
        List<HeatJob> jobs,
        List<Double> idleWatts,
        double idleSupplyWatts,
        ChangeOvers changes,
        List<Before> precedence,
        List<Double> startState,
        Optional<List<Integer>> fixedOrder) {
    /** The most jobs that a task may have. */
    public static final int MOST_JOBS = 1000;

    private static final double COLDEST = -60;
    private static final double HOTTEST = 120;

    public ScheduleTask {
        Require.present(model, "model");
        Require.finite(ambientCelsius, "ambientCelsius");
        if (ambientCelsius < COLDEST || ambientCelsius > HOTTEST) {
            throw new IllegalArgumentException(
                    "ambientCelsius is " + ambientCelsius + "; it must lie between " + COLDEST + " and " + HOTTEST);
        }
        Require.notNegative(marginKelvin, "marginKelvin");
        jobs = List.copyOf(jobs);
        if (jobs.isEmpty() || jobs.size() > MOST_JOBS) {
            throw new IllegalArgumentException(
                    "jobs has " + jobs.size() + " entries; it must have between 1 and " + MOST_JOBS);
        }
        checkJobs(model, jobs);
        idleWatts = List.copyOf(idleWatts);
        Require.size(idleWatts.size(), model.sources().size(), "idleWatts");
        idleWatts.forEach(value -> Require.notNegative(value, "idleWatts"));
        Require.notNegative(idleSupplyWatts, "idleSupplyWatts");
        Require.size(Require.present(changes, "changes").firstSeconds().size(), jobs.size(), "changes");
        precedence = List.copyOf(precedence);
        new Precedence(jobs.size(), precedence);
        startState = startState.isEmpty() ? Collections.nCopies(model.modeCount(), 0.0) : List.copyOf(startState);
        Require.size(startState.size(), model.modeCount(), "startState");
        startState.forEach(value -> Require.finite(value, "startState"));
        fixedOrder = Require.present(fixedOrder, "fixedOrder").map(List::copyOf);
        if (fixedOrder.isPresent()
                && !fixedOrder.get().stream()
                        .sorted()
                        .toList()
                        .equals(IntStream.range(0, jobs.size()).boxed().toList())) {
            throw new IllegalArgumentException("fixedOrder is " + fixedOrder.get()
                    + "; it must hold each number from 0 to " + (jobs.size() - 1) + " once");
        }
    }

    /**
     * Makes a task that begins cold, with change-overs that take no time, no heat between jobs and no order to be kept.
     */
    public static ScheduleTask of(HeatModel model, double ambientCelsius, double marginKelvin, List<HeatJob> jobs) {
        return new ScheduleTask(
                model,
                ambientCelsius,
                marginKelvin,
                jobs,
                Collections.nCopies(model.sources().size(), 0.0),
                0,
                ChangeOvers.none(jobs.size()),
                List.of(),
                List.of(),
                Optional.empty());
    }

    /** Returns this task with other heat between jobs, and other power taken from the supply then, in watts. */
    public ScheduleTask withIdle(List<Double> newIdleWatts, double newIdleSupplyWatts) {
        return new ScheduleTask(
                model,
                ambientCelsius,
                marginKelvin,
                jobs,
                newIdleWatts,
                newIdleSupplyWatts,
                changes,
                precedence,
                startState,
                fixedOrder);
    }

    /** Returns this task with other change-overs. */
    public ScheduleTask withChanges(ChangeOvers newChanges) {
        return new ScheduleTask(
                model,
                ambientCelsius,
                marginKelvin,
                jobs,
                idleWatts,
                idleSupplyWatts,
                newChanges,
                precedence,
                startState,
                fixedOrder);
    }

    /** Returns this task with other orders to be kept. */
    public ScheduleTask withPrecedence(List<Before> newPrecedence) {
        return new ScheduleTask(
                model,
                ambientCelsius,
                marginKelvin,
                jobs,
                idleWatts,
                idleSupplyWatts,
                changes,
                newPrecedence,
                startState,
                fixedOrder);
    }

    /** Returns this task with another state at the beginning; empty for cold. */
    public ScheduleTask withStartState(List<Double> newStartState) {
        return new ScheduleTask(
                model,
                ambientCelsius,
                marginKelvin,
                jobs,
                idleWatts,
                idleSupplyWatts,
                changes,
                precedence,
                newStartState,
                fixedOrder);
    }

    /** Returns this task with an order to keep to, or none. */
    public ScheduleTask withFixedOrder(Optional<List<Integer>> newFixedOrder) {
        return new ScheduleTask(
                model,
                ambientCelsius,
                marginKelvin,
                jobs,
                idleWatts,
                idleSupplyWatts,
                changes,
                precedence,
                startState,
                newFixedOrder);
    }

    private static void checkJobs(HeatModel model, List<HeatJob> jobs) {
        Set<String> ids = new HashSet<>();
        for (HeatJob job : jobs) {
            if (!ids.add(job.id())) {
                throw new IllegalArgumentException("job \"" + job.id() + "\" is there twice");
            }
            Require.size(job.watts().size(), model.sources().size(), "watts of job \"" + job.id() + "\"");
            for (String point : job.rippleKelvin().keySet()) {
                if (model.pointIndex(point) < 0) {
                    throw new IllegalArgumentException("rippleKelvin of job \"" + job.id() + "\" names the point \""
                            + point + "\", which the model has not");
                }
            }
        }
    }
}
