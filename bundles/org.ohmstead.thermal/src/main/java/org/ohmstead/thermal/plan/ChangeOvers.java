// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.ToDoubleBiFunction;
import java.util.function.ToDoubleFunction;

/**
 * How long the handling takes from one job to the next.
 *
 * @param seconds from the job of the row to that of the column, each at least 0; what is on the diagonal does not
 *     matter
 * @param firstSeconds before each job when it is the first, at least 0
 */
public record ChangeOvers(List<List<Double>> seconds, List<Double> firstSeconds) {
    public ChangeOvers {
        seconds = seconds.stream().map(List::copyOf).toList();
        firstSeconds = List.copyOf(firstSeconds);
        Require.size(seconds.size(), firstSeconds.size(), "seconds");
        for (List<Double> row : seconds) {
            Require.size(row.size(), firstSeconds.size(), "row of seconds");
            row.forEach(value -> Require.notNegative(value, "seconds"));
        }
        firstSeconds.forEach(value -> Require.notNegative(value, "firstSeconds"));
    }

    /** Returns change-overs that take no time. */
    public static ChangeOvers none(int jobs) {
        return new ChangeOvers(
                Collections.nCopies(jobs, Collections.nCopies(jobs, 0.0)), Collections.nCopies(jobs, 0.0));
    }

    /**
     * Returns the change-overs that two functions give.
     *
     * @param jobs what there is to do
     * @param between seconds from one to another
     * @param first seconds before the first
     * @param <T> what tells the change-over
     */
    public static <T> ChangeOvers of(List<T> jobs, ToDoubleBiFunction<T, T> between, ToDoubleFunction<T> first) {
        List<List<Double>> rows = new ArrayList<>();
        List<Double> firsts = new ArrayList<>();
        for (int i = 0; i < jobs.size(); i++) {
            List<Double> row = new ArrayList<>();
            for (int k = 0; k < jobs.size(); k++) {
                row.add(i == k ? 0 : between.applyAsDouble(jobs.get(i), jobs.get(k)));
            }
            rows.add(row);
            firsts.add(first.applyAsDouble(jobs.get(i)));
        }
        return new ChangeOvers(rows, firsts);
    }
}
