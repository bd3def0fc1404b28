// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.List;
import java.util.Optional;

/**
 * A job in its place.
 *
 * @param job its number in the task, from 0
 * @param id its id
 * @param changeSeconds handling before it
 * @param restSeconds rest after that and before it
 * @param startSeconds when it begins, from the beginning of the schedule
 * @param endSeconds when it ends
 * @param cause why there is a rest
 * @param limitPointId the point that would get too warm with a shorter rest; empty unless the cause is {@link
 *     Cause#LIMIT}
 * @param peakCelsius the highest temperature of each point of the model during the job, never too low, in degrees
 *     Celsius
 */
public record ScheduledJob(
        int job,
        String id,
        double changeSeconds,
        double restSeconds,
        double startSeconds,
        double endSeconds,
        Cause cause,
        Optional<String> limitPointId,
        List<Double> peakCelsius) {
    /** Why there is a rest before a job. */
    public enum Cause {
        /** There is none. */
        NONE,
        /** Somebody asked for it. */
        WISH,
        /** Something would get too warm without it. */
        LIMIT
    }

    public ScheduledJob {
        Require.notNegative(job, "job");
        Require.named(id, "id");
        Require.notNegative(changeSeconds, "changeSeconds");
        Require.notNegative(restSeconds, "restSeconds");
        Require.notNegative(startSeconds, "startSeconds");
        Require.positive(endSeconds - startSeconds, "endSeconds less startSeconds");
        Require.present(cause, "cause");
        Require.present(limitPointId, "limitPointId");
        peakCelsius = List.copyOf(peakCelsius);
    }
}
