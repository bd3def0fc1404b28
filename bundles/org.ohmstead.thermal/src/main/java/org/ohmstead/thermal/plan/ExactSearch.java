// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Goes through the orders of few jobs one place after the other, leaving out what cannot be better: beginnings that are
 * too long already with the least that the rest takes, and beginnings of the same jobs with the same last one that are
 * neither earlier nor cooler than another when that one has waited for them.
 */
final class ExactSearch {
    /** Most jobs for which it is tried at all. */
    static final int MOST_JOBS = 14;

    private static final int MOST_NODES = 250_000;
    private static final int MOST_LABELS = 12;
    private static final int ASKED_EVERY = 256;
    private static final double SAME_SECONDS = 1e-6;
    private static final double SAME_KELVIN = 1e-9;

    private final Plant plant;
    private final OrderTable table;
    private final HeatRun run;
    private final List<HeatBound.Potential> potentials;
    private final double[] leastChange;
    private final Stop stop;
    private final boolean dominance;
    private final Map<Long, List<Label>> labels = new HashMap<>();
    private final int[] order;
    private int[] best;
    private double bestSeconds;
    private int nodes;
    private boolean complete = true;

    private record Label(double time, double[] state) {}

    ExactSearch(Plant plant, OrderTable table, HeatBound heat, Stop stop) {
        this.plant = plant;
        this.table = table;
        this.stop = stop;
        run = new HeatRun(plant);
        potentials = heat.best();
        dominance = plant.fallsMonotonically()
                && Arrays.stream(plant.weights).flatMapToDouble(Arrays::stream).allMatch(w -> w >= 0);
        order = new int[table.jobs];
        leastChange = new double[table.jobs];
        for (int to = 0; to < table.jobs; to++) {
            leastChange[to] = table.leastChange(to);
        }
    }

    /** Looks for an order that takes less than a known time; empty when it found none. */
    Optional<int[]> below(double seconds) {
        bestSeconds = seconds;
        descend(0, 0, plant.start.clone(), 0);
        return Optional.ofNullable(best);
    }

    /** Returns whether every order has been accounted for. */
    boolean complete() {
        return complete;
    }

    private void descend(int place, int done, double[] state, double time) {
        if (place == table.jobs) {
            if (time < bestSeconds - SAME_SECONDS) {
                bestSeconds = time;
                best = order.clone();
            }
            return;
        }
        nodes++;
        if (nodes > MOST_NODES || nodes % ASKED_EVERY == 0 && stop.getAsBoolean()) {
            complete = false;
        }
        if (!complete || time + least(done, state) >= bestSeconds - SAME_SECONDS) {
            return;
        }
        int last = place == 0 ? -1 : order[place - 1];
        for (int job : nearestFirst(done, last)) {
            double[] next = state.clone();
            double change = table.change(last, job);
            run.change(next, change);
            double rest = run.restSeconds(next, job, table.leastRest[job]);
            if (Double.isNaN(rest)) {
                continue;
            }
            run.rest(next, rest);
            run.on(next, job);
            double end = time + change + rest + plant.onSeconds[job];
            int doneThen = done | 1 << job;
            if (!dominated(doneThen, job, end, next)) {
                order[place] = job;
                descend(place + 1, doneThen, next, end);
            }
        }
    }

    private List<Integer> nearestFirst(int done, int last) {
        List<Integer> jobs = new ArrayList<>();
        for (int job = 0; job < table.jobs; job++) {
            if ((done & 1 << job) == 0 && ready(done, job)) {
                jobs.add(job);
            }
        }
        jobs.sort((one, other) -> Double.compare(table.change(last, one), table.change(last, other)));
        return jobs;
    }

    private boolean ready(int done, int job) {
        for (int other = 0; other < table.jobs; other++) {
            if ((done & 1 << other) == 0 && table.precedence.before(other, job)) {
                return false;
            }
        }
        return true;
    }

    private double least(int done, double[] state) {
        double on = 0;
        double handling = 0;
        double losses = 0;
        for (int job = 0; job < table.jobs; job++) {
            if ((done & 1 << job) == 0) {
                on += plant.onSeconds[job];
                handling += leastChange[job] + table.leastRest[job];
                losses += potentials.isEmpty() ? 0 : potentials.get(0).loss()[job];
            }
        }
        double heat = potentials.isEmpty() ? 0 : potentials.get(0).idleSeconds(state, losses);
        return on + Math.max(handling, heat);
    }

    private boolean dominated(int done, int last, double time, double[] state) {
        if (!dominance) {
            return false;
        }
        List<Label> known = labels.computeIfAbsent((long) done << Byte.SIZE | last, any -> new ArrayList<>());
        for (Label label : known) {
            if (label.time() <= time && coolerByThen(label, time, state)) {
                return true;
            }
        }
        if (known.size() < MOST_LABELS) {
            known.add(new Label(time, state.clone()));
        }
        return false;
    }

    private boolean coolerByThen(Label label, double time, double[] state) {
        double[] waited = label.state().clone();
        run.rest(waited, time - label.time());
        for (int mode = 0; mode < waited.length; mode++) {
            if (waited[mode] > state[mode] + SAME_KELVIN) {
                return false;
            }
        }
        return true;
    }
}
