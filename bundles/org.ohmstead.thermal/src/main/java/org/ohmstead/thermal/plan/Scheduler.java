// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;

/**
 * Finds the order and the rests of shortest total time that keep everything below its limits.
 *
 * <p>For one order the rests follow: just before the job that needs it, as short as the exact temperatures allow. Of up
 * to 14 jobs the orders are gone through with what cannot be better left out, as far as that is feasible; otherwise
 * good orders are bettered by small changes. A lower bound for all orders tells how much there is to gain at the most:
 * the on-times, and whichever is greater of the change-overs' ({@code ChangeBound}) with the rests asked for and of the
 * heat's ({@code HeatBound}); or what the heat of all that must precede a job takes to leave ({@code SequenceBound}),
 * if that is more.
 */
public final class Scheduler {
    private static final double SAME_SECONDS = 1e-6;

    private final ScheduleTask task;
    private final Plant plant;
    private final Plant cut;
    private final OrderTable table;
    private final HeatBound heat;
    private final SequenceBound sequence;
    private final SearchEffort effort;
    private final Stop stop;
    private double lowerBound;
    private boolean proven;

    private Scheduler(ScheduleTask task, Plant plant, SearchEffort effort, Stop stop) {
        this.task = task;
        this.plant = plant;
        this.effort = effort;
        this.stop = stop;
        cut = PlantCut.of(plant);
        table = new OrderTable(task);
        heat = new HeatBound(cut, table.precedence);
        sequence = new SequenceBound(cut, table, heat);
    }

    /**
     * Looks for a schedule until it is proven shortest, the effort is spent or it is cancelled; it then gives the best
     * so far.
     *
     * @param task what is to be done
     * @param effort how long to look
     * @param cancelled asked every now and then from this thread; true ends the search
     * @param progress told every now and then from this thread how much is done, 0 to 1
     */
    public static ScheduleAnswer run(
            ScheduleTask task, SearchEffort effort, BooleanSupplier cancelled, DoubleConsumer progress) {
        Require.present(task, "task");
        Require.present(effort, "effort");
        Require.present(cancelled, "cancelled");
        Require.present(progress, "progress");
        Plant plant = Plant.of(task);
        List<Obstacle> obstacles = Obstacles.of(task, plant);
        if (!obstacles.isEmpty()) {
            return new Impossible(obstacles);
        }
        Stop stop = new Stop(cancelled, progress, effort.timeLimit());
        ScheduleAnswer answer = new Scheduler(task, plant, effort, stop).answer();
        stop.tell(1);
        return answer;
    }

    private ScheduleAnswer answer() {
        Optional<int[]> order = task.fixedOrder().isPresent()
                ? Optional.of(task.fixedOrder().get().stream()
                        .mapToInt(Integer::intValue)
                        .toArray())
                : search();
        int[] chosen = order.orElseGet(() -> new FirstOrders(cut, table).asGiven());
        if (order.isEmpty() || task.fixedOrder().isPresent()) {
            bound(chosen);
        }
        return new ScheduleMaker(task, plant).make(chosen, finding());
    }

    private ScheduleMaker.Finding finding() {
        Schedule.Ending ending = task.fixedOrder().isPresent()
                ? Schedule.Ending.FIXED_ORDER
                : stop.ending().orElse(Schedule.Ending.COMPLETE);
        return new ScheduleMaker.Finding(lowerBound, proven, ending);
    }

    private void bound(int[] order) {
        ChangeBound changes = new ChangeBound(table.between, table.first, table.precedence, table.changes(order));
        lowerBound = table.onSum + Math.max(table.restSum + changes.seconds(), heat.idleSeconds());
        lowerBound = Math.max(lowerBound, sequence.seconds());
    }

    private Optional<int[]> search() {
        OrderTrial trial = new OrderTrial(cut, table, heat);
        int[] best = null;
        double seconds = Double.POSITIVE_INFINITY;
        for (int[] order : new FirstOrders(cut, table).all()) {
            double taken = trial.take(order);
            if (taken < seconds - SAME_SECONDS) {
                best = order;
                seconds = taken;
            }
        }
        if (best != null) {
            bound(best);
        }
        boolean atBound = best != null && seconds <= lowerBound + SAME_SECONDS;
        boolean complete = false;
        if (table.jobs <= ExactSearch.MOST_JOBS && !atBound) {
            ExactSearch exact = new ExactSearch(cut, table, heat, stop);
            best = exact.below(seconds).orElse(best);
            complete = exact.complete();
        }
        if (best == null) {
            return Optional.empty();
        }
        bound(best);
        LocalSearch local = new LocalSearch(
                table,
                trial,
                complete ? new SearchEffort(effort.seed(), 0, effort.timeLimit()) : effort,
                stop,
                lowerBound);
        best = local.better(best);
        // With the shortest rests for each order proven and every order accounted for nothing can be shorter.
        proven = complete && plant.fallsMonotonically();
        if (proven) {
            lowerBound = Math.max(lowerBound, trial.take(best) - 2 * SAME_SECONDS * table.jobs);
        }
        return Optional.of(best);
    }
}
