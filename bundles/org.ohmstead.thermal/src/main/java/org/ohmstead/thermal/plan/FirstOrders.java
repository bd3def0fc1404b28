// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Orders that come first to mind: as the jobs are given, and always the next one that can begin soonest. */
final class FirstOrders {
    private static final double SAME_SECONDS = 1e-3;

    private final Plant plant;
    private final OrderTable table;
    private final HeatRun run;
    private final double[] heat;

    private enum Rule {
        SOONEST_THEN_CALM,
        SOONEST_THEN_HOT,
        LEAST_HANDLING,
        CANNOT_WAIT
    }

    FirstOrders(Plant plant, OrderTable table) {
        this.plant = plant;
        this.table = table;
        run = new HeatRun(plant);
        heat = new double[table.jobs];
        for (int job = 0; job < table.jobs; job++) {
            heat[job] = Arrays.stream(plant.target[job]).sum() * plant.onSeconds[job];
        }
    }

    /** Returns different orders that keep the precedence; some of them may be impossible. */
    List<int[]> all() {
        List<int[]> orders = new ArrayList<>();
        orders.add(asGiven());
        for (Rule rule : Rule.values()) {
            int[] order = greedy(rule);
            if (orders.stream().noneMatch(other -> Arrays.equals(other, order))) {
                orders.add(order);
            }
        }
        return orders;
    }

    int[] asGiven() {
        int[] order = new int[table.jobs];
        boolean[] done = new boolean[table.jobs];
        for (int place = 0; place < order.length; place++) {
            int next = 0;
            while (done[next] || !ready(next, done)) {
                next++;
            }
            order[place] = next;
            done[next] = true;
        }
        return order;
    }

    private boolean ready(int job, boolean[] done) {
        for (int other = 0; other < table.jobs; other++) {
            if (!done[other] && table.precedence.before(other, job)) {
                return false;
            }
        }
        return true;
    }

    private int[] greedy(Rule rule) {
        int[] order = new int[table.jobs];
        boolean[] done = new boolean[table.jobs];
        double[] state = plant.start.clone();
        int last = -1;
        for (int place = 0; place < order.length; place++) {
            int next = -1;
            double[] nextKeys = null;
            for (int job = 0; job < table.jobs; job++) {
                if (!done[job] && ready(job, done)) {
                    double[] keys = keys(rule, last, job, state);
                    if (nextKeys == null || less(keys, nextKeys)) {
                        next = job;
                        nextKeys = keys;
                    }
                }
            }
            run.change(state, table.change(last, next));
            double rest = run.restSeconds(state, next, table.leastRest[next]);
            run.rest(state, Double.isNaN(rest) ? 0 : rest);
            run.on(state, next);
            order[place] = next;
            done[next] = true;
            last = next;
        }
        return order;
    }

    private double[] keys(Rule rule, int last, int job, double[] state) {
        double change = table.change(last, job);
        if (rule == Rule.LEAST_HANDLING) {
            return new double[] {change + table.leastRest[job], table.stress[job], heat[job]};
        }
        double[] begun = state.clone();
        run.change(begun, change);
        double rest = run.restSeconds(begun, job, table.leastRest[job]);
        double wait = change + (Double.isNaN(rest) ? Double.MAX_VALUE / 2 : rest);
        if (rule == Rule.CANNOT_WAIT) {
            boolean holdsLater = run.holds(plant.idleTarget.clone(), job);
            return new double[] {holdsLater ? 1 : 0, wait, heat[job]};
        }
        return rule == Rule.SOONEST_THEN_HOT
                ? new double[] {wait, -heat[job], table.stress[job]}
                : new double[] {wait, table.stress[job], heat[job]};
    }

    private static boolean less(double[] one, double[] other) {
        for (int i = 0; i < one.length; i++) {
            if (Math.abs(one[i] - other[i]) > SAME_SECONDS) {
                return one[i] < other[i];
            }
        }
        return false;
    }
}
