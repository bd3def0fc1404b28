// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.Arrays;
import java.util.stream.DoubleStream;

/**
 * Makes the stress rise more steadily where that costs no time: it moves single jobs, and whole stretches between which
 * the handling is long, so that fewer pairs are in falling order.
 */
final class CalmSearch {
    private static final double SAME_SECONDS = 1e-6;
    private static final int TRIALS_PER_JOB = 20;

    private final OrderTable table;
    private final OrderTrial trial;
    private final Stop stop;
    private final OrderMoves moves;
    private double bound;
    private int left;

    CalmSearch(OrderTable table, OrderTrial trial, Stop stop) {
        this.table = table;
        this.trial = trial;
        this.stop = stop;
        moves = new OrderMoves(trial, table.precedence);
    }

    /** Returns an order that takes no longer than one does. */
    int[] calmer(int[] order, double seconds) {
        trial.take(order);
        bound = seconds + SAME_SECONDS;
        left = TRIALS_PER_JOB * table.jobs;
        double[] thresholds = Arrays.stream(table.between)
                .flatMapToDouble(DoubleStream::of)
                .distinct()
                .sorted()
                .toArray();
        boolean helped = true;
        while (helped && !over()) {
            helped = stretches(-1);
            for (double threshold : thresholds) {
                helped |= stretches(threshold);
            }
        }
        return trial.order();
    }

    private boolean over() {
        return left <= 0 || stop.getAsBoolean();
    }

    /** Moves stretches within which no change-over is longer than a threshold; single jobs for one below 0. */
    private boolean stretches(double threshold) {
        boolean helped = false;
        int from = 0;
        while (from < table.jobs && !over()) {
            int end = from + 1;
            while (end < table.jobs && table.between[trial.at(end - 1)][trial.at(end)] <= threshold) {
                end++;
            }
            helped |= move(from, end - from);
            from = end;
        }
        return helped;
    }

    private boolean move(int from, int length) {
        for (int to = 0; to + length <= table.jobs && !over(); to++) {
            if (to == from || fewer(from, length, to) <= 0 || !moves.moved(from, length, to)) {
                continue;
            }
            if (table.onSum + table.restSum + table.changes(moves.candidate()) > bound) {
                continue;
            }
            left--;
            int changed = Math.min(from, to);
            if (!Double.isInfinite(trial.seconds(moves.candidate(), changed, bound))) {
                trial.take(moves.candidate(), changed);
                return true;
            }
        }
        return false;
    }

    /** Returns how many pairs fewer are in falling order when a stretch moves to another place. */
    private int fewer(int from, int length, int to) {
        int fewer = 0;
        int low = to < from ? to : from + length;
        int high = to < from ? from : to + length;
        for (int passed = low; passed < high; passed++) {
            for (int place = from; place < from + length; place++) {
                int compared = Double.compare(table.stress[trial.at(place)], table.stress[trial.at(passed)]);
                fewer += to < from ? -compared : compared;
            }
        }
        return fewer;
    }
}
