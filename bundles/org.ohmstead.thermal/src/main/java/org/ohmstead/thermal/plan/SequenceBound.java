// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * How long a run takes at the least because a job has to find things cool after all that precedes it.
 *
 * <p>Proof. Take a mode, and z as in {@link HeatBound}. Each job j adds q = Z (1 - e^(-d/tau)), at least 0, to z at its
 * end C, of which e^(-(t - C)/tau) is left at a time t; so when job k begins at s, z = e^(-s/tau) (z0 + sum of q
 * e^(C/tau)) over all jobs done by then, and it may be at most y (step 3 there). So s is at least tau ln((z0 + M) / y)
 * for any M that the sum cannot go below.
 *
 * <p>(1) Such an M for the predecessors of k: let each job take its on-time, its least change-over from anywhere and
 * the rest asked for, without other waiting, and forget the precedence among them. By exchange of neighbours the sum of
 * q e^(C/tau) is then least in falling order of q / (1 - e^(-p/tau)), p being the time that a job takes (Rothkopf 1966,
 * with growth in place of discount). Some jobs may instead be taken out of that row, which makes the others no later,
 * and be counted with the earliest end that is proven for them. The best of several such choices counts.
 *
 * <p>(2) A job that is neither before nor after k by precedence is done either before it, when it adds at least q
 * e^(C/tau) with its earliest end, or after it, when it adds its time p to what comes after. With W the sum of the
 * former and P the times of the same jobs, the whole takes at least the least of tau ln((z0 + M + W) / y) - P, plus all
 * times but those before k. Were jobs divisible, W would be least for a given P in rising order of its part over p;
 * along that row the begin of k is what is known of it otherwise up to a point and the logarithm from there on, which
 * is concave between two ends of jobs, so that the whole is least at one of these or at that point.
 *
 * <p>(3) No job begins before its predecessors' on-times, rests asked for and change-overs are over, the latter at
 * least a cheapest arborescence ({@link ChangeBound}) over them and the job, with each arc as short as any detour makes
 * it, as other jobs may lie between.
 */
final class SequenceBound {
    private static final int[] TAKEN_OUT = {0, 1, 2, 3, 4, 6, 8, 12, 16, 24};
    private static final int ROUNDS = 2;
    private static final double ROUNDING = 1e-9;

    private final Plant plant;
    private final OrderTable table;
    private final List<List<Integer>> before = new ArrayList<>();
    /** The least time that each job takes. */
    private final double[] times;

    /** A time before which each job cannot begin. */
    private final double[] earliest;

    private double seconds;

    SequenceBound(Plant plant, OrderTable table, HeatBound heat) {
        this.plant = plant;
        this.table = table;
        times = new double[table.jobs];
        for (int job = 0; job < table.jobs; job++) {
            times[job] = plant.onSeconds[job] + table.leastRest[job] + table.leastChange(job);
            int later = job;
            before.add(IntStream.range(0, table.jobs)
                    .filter(other -> table.precedence.before(other, later))
                    .boxed()
                    .toList());
        }
        earliest = new EarliestBegins(table, plant.onSeconds).seconds();
        int[] order = IntStream.range(0, table.jobs)
                .boxed()
                .sorted(Comparator.comparingInt(job -> before.get(job).size()))
                .mapToInt(Integer::intValue)
                .toArray();
        for (int round = 0; round < ROUNDS; round++) {
            for (int mode = 0; mode < plant.modes(); mode++) {
                if (heat.mostAtBegin(mode).isPresent()) {
                    for (int job : order) {
                        look(mode, job, heat.mostAtBegin(mode).get()[job]);
                    }
                }
            }
        }
    }

    /** Returns the least that the whole can take, in seconds. */
    double seconds() {
        return Math.max(0, seconds * (1 - ROUNDING) - ROUNDING);
    }

    private void look(int mode, int job, double mostAtBegin) {
        double tau = plant.tauSeconds[mode];
        if (mostAtBegin <= 0) {
            return;
        }
        double sum = leastSum(mode, before.get(job));
        if (sum > mostAtBegin) {
            earliest[job] = Math.max(earliest[job], tau * Math.log(sum / mostAtBegin));
        }
        double after = plant.onSeconds[job];
        List<Integer> free = new ArrayList<>();
        for (int other = 0; other < table.jobs; other++) {
            if (table.precedence.before(job, other)) {
                after += times[other];
            } else if (other != job && !table.precedence.before(other, job)) {
                free.add(other);
                after += times[other];
            }
        }
        free.sort(Comparator.comparingDouble(other -> atEarliest(mode, other) / times[other]));
        double least = earliest[job] + after;
        // The sum at which the heat begins to tell more than the earliest begin that is known.
        double turn = mostAtBegin * Math.exp(earliest[job] / tau);
        for (int other : free) {
            double more = sum + atEarliest(mode, other);
            if (sum < turn && more > turn) {
                least = Math.min(least, earliest[job] + after - times[other] * (turn - sum) / (more - sum));
            }
            sum = more;
            after -= times[other];
            boolean tells = sum > turn && !Double.isInfinite(sum);
            double begin = tells ? tau * Math.log(sum / mostAtBegin) : earliest[job];
            least = Math.min(least, begin + after);
        }
        seconds = Math.max(seconds, least);
    }

    /** The least that z0 and what some jobs add can come to, each multiplied by e^(C/tau). */
    private double leastSum(int mode, List<Integer> jobs) {
        double tau = plant.tauSeconds[mode];
        List<Integer> row = new ArrayList<>(jobs);
        row.sort(Comparator.comparingDouble(other -> heat(mode, other) / Math.expm1(-times[other] / tau)));
        List<Integer> late = new ArrayList<>(jobs);
        late.sort(Comparator.comparingDouble(other -> -earliest[other] - plant.onSeconds[other]));
        double start = plant.start[mode] - plant.idleTarget[mode];
        double greatest = Double.NEGATIVE_INFINITY;
        double takenOut = 0;
        int taken = 0;
        for (int count : TAKEN_OUT) {
            while (taken < Math.min(count, late.size())) {
                int next = late.get(taken++);
                row.remove(Integer.valueOf(next));
                takenOut += atEarliest(mode, next);
            }
            double sum = start + takenOut;
            double end = 0;
            for (int other : row) {
                end += times[other];
                sum += heat(mode, other) * Math.exp(end / tau);
            }
            greatest = Double.isInfinite(sum) ? greatest : Math.max(greatest, sum);
        }
        return greatest;
    }

    private double atEarliest(int mode, int job) {
        return heat(mode, job) * Math.exp((earliest[job] + plant.onSeconds[job]) / plant.tauSeconds[mode]);
    }

    /** What a job adds to a mode by its end, in kelvins. */
    private double heat(int mode, int job) {
        return (plant.target[job][mode] - plant.idleTarget[mode]) * (1 - plant.onDecay[job][mode]);
    }
}
