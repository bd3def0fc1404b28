// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.List;

/** What a search needs to know of a task besides the heat, as plain numbers. */
final class OrderTable {
    final int jobs;
    final double[][] between;
    final double[] first;
    final double[] leastRest;
    final double[] stress;
    final double onSum;
    final double restSum;
    final Precedence precedence;

    OrderTable(ScheduleTask task) {
        jobs = task.jobs().size();
        between = task.changes().seconds().stream().map(Plant::plain).toArray(double[][]::new);
        first = Plant.plain(task.changes().firstSeconds());
        leastRest = task.jobs().stream().mapToDouble(HeatJob::leastRestSeconds).toArray();
        stress = task.jobs().stream().mapToDouble(HeatJob::stress).toArray();
        onSum = task.jobs().stream().mapToDouble(HeatJob::onSeconds).sum();
        restSum = task.jobs().stream().mapToDouble(HeatJob::leastRestSeconds).sum();
        Precedence wanted = new Precedence(jobs, task.precedence());
        boolean broken = task.fixedOrder().isPresent()
                && !wanted.allows(task.fixedOrder().get().stream()
                        .mapToInt(Integer::intValue)
                        .toArray());
        precedence = broken ? new Precedence(jobs, List.of()) : wanted;
    }

    /** Returns the change-over to a job in seconds from another, or from the start when that is -1. */
    double change(int from, int to) {
        return from < 0 ? first[to] : between[from][to];
    }

    /** Returns the shortest change-over to a job from anywhere that precedence allows. */
    double leastChange(int to) {
        double least = precedence.canBeFirst(to) ? first[to] : Double.POSITIVE_INFINITY;
        for (int from = 0; from < jobs; from++) {
            if (precedence.canFollow(from, to)) {
                least = Math.min(least, between[from][to]);
            }
        }
        return least;
    }

    double changes(int[] order) {
        double sum = first[order[0]];
        for (int i = 1; i < order.length; i++) {
            sum += between[order[i - 1]][order[i]];
        }
        return sum;
    }
}
