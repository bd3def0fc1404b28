// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.List;

/**
 * Reckons how long an order takes, from the first place in which it differs from the one before, and no further than is
 * worth while.
 */
final class OrderTrial {
    private final Plant plant;
    private final OrderTable table;
    private final HeatRun run;
    private final List<HeatBound.Potential> potentials;
    private final int[] order;
    private final double[][] states;
    private final double[] ends;
    private final double[] work;
    private double total;

    OrderTrial(Plant plant, OrderTable table, HeatBound heat) {
        this.plant = plant;
        this.table = table;
        run = new HeatRun(plant);
        potentials = heat.best();
        order = new int[table.jobs];
        states = new double[table.jobs + 1][];
        ends = new double[table.jobs + 1];
        states[0] = plant.start.clone();
        work = new double[plant.modes()];
        total = Double.POSITIVE_INFINITY;
    }

    /**
     * Makes an order the one that others are compared with, and returns how long it takes; infinite when a job of it is
     * impossible.
     */
    double take(int[] newOrder) {
        System.arraycopy(newOrder, 0, order, 0, order.length);
        total = walk(0, true, newOrder, Double.POSITIVE_INFINITY);
        return total;
    }

    /** Takes over an order that differs from the current one only from a place on. */
    void take(int[] newOrder, int from) {
        System.arraycopy(newOrder, from, order, from, order.length - from);
        total = walk(from, true, newOrder, Double.POSITIVE_INFINITY);
    }

    double total() {
        return total;
    }

    int[] order() {
        return order.clone();
    }

    int at(int place) {
        return order[place];
    }

    /**
     * Returns how long an order takes that differs from the current one only from a place on; infinite when it is
     * impossible or takes longer than a bound.
     */
    double seconds(int[] newOrder, int from, double bound) {
        return walk(from, false, newOrder, bound);
    }

    private double walk(int from, boolean keep, int[] newOrder, double bound) {
        System.arraycopy(states[from], 0, work, 0, work.length);
        double time = ends[from];
        double handling = handling(newOrder, from);
        double on = on(newOrder, from);
        double losses = losses(newOrder, from);
        for (int place = from; place < newOrder.length; place++) {
            int job = newOrder[place];
            if (time + on + Math.max(handling, heat(losses)) > bound) {
                return Double.POSITIVE_INFINITY;
            }
            double change = table.change(place == 0 ? -1 : newOrder[place - 1], job);
            run.change(work, change);
            double rest = run.restSeconds(work, job, table.leastRest[job]);
            if (Double.isNaN(rest)) {
                return Double.POSITIVE_INFINITY;
            }
            if (rest > 0) {
                run.rest(work, rest);
            }
            run.on(work, job);
            time += change + rest + plant.onSeconds[job];
            on -= plant.onSeconds[job];
            handling -= change + table.leastRest[job];
            losses -= potentials.isEmpty() ? 0 : potentials.get(0).loss()[job];
            if (keep) {
                states[place + 1] = work.clone();
                ends[place + 1] = time;
            }
        }
        return time > bound ? Double.POSITIVE_INFINITY : time;
    }

    private double handling(int[] newOrder, int from) {
        double sum = 0;
        for (int place = from; place < newOrder.length; place++) {
            int job = newOrder[place];
            sum += table.change(place == 0 ? -1 : newOrder[place - 1], job) + table.leastRest[job];
        }
        return sum;
    }

    private double on(int[] newOrder, int from) {
        double sum = 0;
        for (int place = from; place < newOrder.length; place++) {
            sum += plant.onSeconds[newOrder[place]];
        }
        return sum;
    }

    private double losses(int[] newOrder, int from) {
        double sum = 0;
        for (int place = from; place < newOrder.length && !potentials.isEmpty(); place++) {
            sum += potentials.get(0).loss()[newOrder[place]];
        }
        return sum;
    }

    /** The least idle time that the heat asks of the rest of an order. */
    private double heat(double losses) {
        return potentials.isEmpty() ? 0 : potentials.get(0).idleSeconds(work, losses);
    }
}
