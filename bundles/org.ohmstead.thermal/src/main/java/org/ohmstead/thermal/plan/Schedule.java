// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.List;

/**
 * When to do what. Its rests come just before the job that needs them and are as short as they can be.
 *
 * @param jobs the jobs in the order to do them
 * @param totalSeconds from the beginning to the end of the last job
 * @param onSeconds how much of that the jobs are on
 * @param changeSeconds how much goes into change-overs
 * @param restSeconds how much is rested besides
 * @param energyJoules energy taken from the supply, as far as the task tells
 * @param lowerBoundSeconds what no order that keeps the precedence can go below; where the fixed order breaks the
 *     precedence, no order at all
 * @param provenShortest whether it is proven that no other order and no other rests take less time
 * @param restsProvenShortest whether it is proven that no other rests do in this order: so where all that warms a point
 *     warms it the less the longer ago it was. Where a point lags behind its source the limits are kept all the same.
 * @param ending why the search ended
 * @param message the same in whole sentences
 */
public record Schedule(
        List<ScheduledJob> jobs,
        double totalSeconds,
        double onSeconds,
        double changeSeconds,
        double restSeconds,
        double energyJoules,
        double lowerBoundSeconds,
        boolean provenShortest,
        boolean restsProvenShortest,
        Ending ending,
        String message)
        implements ScheduleAnswer {
    /** Why a search ended. */
    public enum Ending {
        /** It has done what it was to do. */
        COMPLETE,
        /** It was cancelled. */
        CANCELLED,
        /** Its time was over. */
        TIME_LIMIT,
        /** There was nothing to search, as the order was given. */
        FIXED_ORDER
    }

    public Schedule {
        jobs = List.copyOf(jobs);
        Require.positive(totalSeconds, "totalSeconds");
        Require.positive(onSeconds, "onSeconds");
        Require.notNegative(changeSeconds, "changeSeconds");
        Require.notNegative(restSeconds, "restSeconds");
        Require.notNegative(energyJoules, "energyJoules");
        Require.positive(lowerBoundSeconds, "lowerBoundSeconds");
        Require.present(ending, "ending");
        Require.named(message, "message");
    }

    /** Returns by which part of the lower bound the schedule is longer than it, at least 0: 0.05 is 5 %. */
    public double gapRatio() {
        return Math.max(0, totalSeconds / lowerBoundSeconds - 1);
    }

    /** Returns the jobs' numbers in the order to do them. */
    public List<Integer> order() {
        return jobs.stream().map(ScheduledJob::job).toList();
    }
}
