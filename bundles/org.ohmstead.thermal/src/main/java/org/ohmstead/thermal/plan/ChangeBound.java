// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.Arrays;

/**
 * What the change-overs of any order take at the least.
 *
 * <p>Proof. An order is a tree in which every job but the first hangs from the one before it: a spanning arborescence,
 * of which each job has at most one branch. The cheapest spanning arborescence of all arcs that precedence leaves is
 * therefore at most the cheapest order. Adding to all arcs out of a job a penalty of at least 0 and taking the sum of
 * the penalties off again keeps that true, as an order uses each penalty at most once; the penalties are moved so that
 * the bound rises (subgradient ascent), and every value on the way is valid.
 */
final class ChangeBound {
    private static final int FEW_JOBS = 40;
    private static final int ROUNDS_OF_FEW = 150;
    private static final int ROUNDS_OF_MANY = 50;
    private static final double CALMING = 0.95;
    private static final double ROUNDING = 1e-9;

    private final int jobs;
    private final double[][] arcs;
    private final double rootPrice;
    private final double best;

    /**
     * Finds the bound.
     *
     * @param between seconds from one job to another
     * @param first seconds before each job when it is the first
     * @param known what some order takes; steers the ascent only
     */
    ChangeBound(double[][] between, double[] first, Precedence precedence, double known) {
        jobs = first.length;
        double greatest = 0;
        for (int i = 0; i < jobs; i++) {
            greatest = Math.max(
                    greatest, Math.max(first[i], Arrays.stream(between[i]).max().orElse(0)));
        }
        // Dearer than any order is, so that no more jobs hang from the root than must.
        rootPrice = 1 + 2 * greatest * jobs;
        arcs = new double[jobs + 1][jobs + 1];
        for (double[] row : arcs) {
            Arrays.fill(row, Double.POSITIVE_INFINITY);
        }
        for (int to = 0; to < jobs; to++) {
            for (int from = 0; from < jobs; from++) {
                if (precedence.canFollow(from, to)) {
                    arcs[from][to] = between[from][to];
                }
            }
            if (precedence.canBeFirst(to)) {
                arcs[jobs][to] = first[to] + rootPrice;
            }
        }
        best = ascend(known);
    }

    double seconds() {
        return best;
    }

    private double ascend(double known) {
        double[] penalty = new double[jobs];
        double highest = 0;
        int rounds = jobs <= FEW_JOBS ? ROUNDS_OF_FEW : ROUNDS_OF_MANY;
        double boldness = 1;
        for (int round = 0; round < rounds; round++) {
            double[][] cost = penalised(penalty);
            int[] parent = Arborescence.cheapest(cost, jobs);
            double value = -rootPrice - Arrays.stream(penalty).sum();
            int[] excess = new int[jobs];
            Arrays.fill(excess, -1);
            for (int to = 0; to < jobs; to++) {
                value += cost[parent[to]][to];
                if (parent[to] < jobs) {
                    excess[parent[to]]++;
                }
            }
            boldness = value > highest ? boldness : boldness * CALMING;
            highest = Math.max(highest, value);
            double square = square(penalty, excess);
            if (square == 0 || known <= highest) {
                break;
            }
            double step = boldness * (known - value) / square;
            for (int job = 0; job < jobs; job++) {
                penalty[job] = Math.max(0, penalty[job] + step * excess[job]);
            }
        }
        return Math.max(0, highest * (1 - ROUNDING) - ROUNDING);
    }

    private double[][] penalised(double[] penalty) {
        double[][] cost = new double[jobs + 1][];
        for (int from = 0; from <= jobs; from++) {
            cost[from] = arcs[from].clone();
            for (int to = 0; from < jobs && to < jobs; to++) {
                cost[from][to] += penalty[from];
            }
        }
        return cost;
    }

    /** The square of the step that the penalties would take, without those that cannot fall any more. */
    private static double square(double[] penalty, int[] excess) {
        double square = 0;
        for (int job = 0; job < excess.length; job++) {
            square += penalty[job] > 0 || excess[job] > 0 ? excess[job] * excess[job] : 0;
        }
        return square;
    }
}
