// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.SplittableRandom;

/**
 * Betters an order by small changes: it moves stretches of jobs, turns them round, swaps two; first only what helps,
 * then with simulated annealing, at last what makes the stress rise more steadily without costing time ({@link
 * CalmSearch}).
 */
final class LocalSearch {
    private static final double SAME_SECONDS = 1e-6;
    private static final int LONGEST_STRETCH = 3;
    private static final int LONGEST_TURN = 12;
    private static final int ASKED_EVERY = 64;
    private static final double COLDEST_RATIO = 1e-3;

    private final OrderTable table;
    private final OrderTrial trial;
    private final SearchEffort effort;
    private final Stop stop;
    private final double enoughSeconds;
    private final OrderMoves moves;
    private int[] best;
    private double bestSeconds;
    private int trials;
    private int told;

    /**
     * Prepares a search.
     *
     * @param enoughSeconds a total that no order can beat
     */
    LocalSearch(OrderTable table, OrderTrial trial, SearchEffort effort, Stop stop, double enoughSeconds) {
        this.table = table;
        this.trial = trial;
        this.effort = effort;
        this.stop = stop;
        this.enoughSeconds = enoughSeconds;
        moves = new OrderMoves(trial, table.precedence);
    }

    /** Returns the best order found from one that is possible. */
    int[] better(int[] start) {
        best = start.clone();
        bestSeconds = trial.take(start);
        descend();
        anneal();
        trial.take(best);
        descend();
        return new CalmSearch(table, trial, stop).calmer(best, bestSeconds);
    }

    /** Returns how many orders were looked at. */
    int trials() {
        return trials;
    }

    private boolean over() {
        if (bestSeconds <= enoughSeconds + SAME_SECONDS || trials >= effort.mostTrials()) {
            return true;
        }
        if (trials >= told + ASKED_EVERY) {
            told = trials;
            stop.tell((double) trials / effort.mostTrials());
        }
        return stop.getAsBoolean();
    }

    /** Moves single jobs and short stretches for as long as one of all such moves helps. */
    private void descend() {
        boolean helped = true;
        while (helped && !over()) {
            helped = false;
            for (int from = 0; from < table.jobs && !over(); from++) {
                for (int length = 1; length <= LONGEST_STRETCH && from + length <= table.jobs; length++) {
                    helped |= descend(from, length);
                }
            }
        }
    }

    private boolean descend(int from, int length) {
        boolean helped = false;
        for (int to = 0; to + length <= table.jobs && !over(); to++) {
            if (to != from && moves.moved(from, length, to)) {
                helped |= tryOut(Math.min(from, to), trial.total() - SAME_SECONDS);
            }
        }
        return helped;
    }

    /** Looks at the candidate, and takes it over when it takes at most so many seconds. */
    private boolean tryOut(int firstChanged, double bound) {
        if (table.onSum + table.restSum + table.changes(moves.candidate()) > bound + SAME_SECONDS / 2) {
            return false;
        }
        trials++;
        if (Double.isInfinite(trial.seconds(moves.candidate(), firstChanged, bound))) {
            return false;
        }
        trial.take(moves.candidate(), firstChanged);
        if (trial.total() < bestSeconds - SAME_SECONDS) {
            best = trial.order();
            bestSeconds = trial.total();
        }
        return true;
    }

    private void anneal() {
        if (table.jobs < 2 || Double.isInfinite(bestSeconds)) {
            return;
        }
        SplittableRandom random = new SplittableRandom(effort.seed());
        double hottest = Math.max(1, (bestSeconds - table.onSum) / table.jobs);
        // What the filter by handling alone turns down costs next to nothing, but must not go on for ever.
        long mostMoves = 20L * effort.mostTrials();
        for (long move = 0; move < mostMoves && !over(); move++) {
            double progress = Math.max((double) move / mostMoves, (double) trials / effort.mostTrials());
            double heat = hottest * Math.pow(COLDEST_RATIO, progress);
            double bound = trial.total() - heat * Math.log(1 - random.nextDouble());
            int changed = propose(random);
            if (changed >= 0) {
                tryOut(changed, bound);
            }
        }
    }

    /** Makes a random candidate; returns the first place that it changes, or -1 when precedence forbids it. */
    private int propose(SplittableRandom random) {
        int kind = random.nextInt(4);
        int from = random.nextInt(table.jobs);
        int to = random.nextInt(table.jobs);
        if (from == to) {
            return -1;
        }
        if (kind == 0) {
            int low = Math.min(from, to);
            int high = Math.min(Math.max(from, to), low + LONGEST_TURN);
            return moves.turned(low, high) ? low : -1;
        }
        if (kind == 1) {
            return moves.swapped(Math.min(from, to), Math.max(from, to)) ? Math.min(from, to) : -1;
        }
        int length = 1 + random.nextInt(Math.min(kind == 2 ? 1 : LONGEST_TURN, table.jobs));
        if (from + length > table.jobs || to + length > table.jobs) {
            return -1;
        }
        return moves.moved(from, length, to) ? Math.min(from, to) : -1;
    }
}
