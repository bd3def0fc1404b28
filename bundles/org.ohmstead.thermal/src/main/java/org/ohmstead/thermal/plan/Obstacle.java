// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.Optional;

/**
 * Something that no rest can help against.
 *
 * @param reason of which kind it is
 * @param jobId the job concerned; empty when it is about all
 * @param pointId the point whose limit would be broken; empty when it is about the order alone
 * @param excessKelvin by how much, in kelvins, at least 0, above the limit less the margin
 * @param what what is wrong, a whole sentence
 * @param remedy what to do about it, a whole sentence
 */
public record Obstacle(
        Reason reason,
        Optional<String> jobId,
        Optional<String> pointId,
        double excessKelvin,
        String what,
        String remedy) {
    /** Kinds of obstacles. */
    public enum Reason {
        /** The air alone is too warm. */
        AMBIENT,
        /** Idling alone makes it too warm in the end. */
        IDLE,
        /** A job makes it too warm even from the coolest state that there can be. */
        JOB,
        /**
         * No order was found, or the one asked for is not possible: a job needs to be cooler than idling lets it get.
         */
        ORDER
    }

    public Obstacle {
        Require.present(reason, "reason");
        Require.present(jobId, "jobId");
        Require.present(pointId, "pointId");
        Require.notNegative(excessKelvin, "excessKelvin");
        Require.named(what, "what");
        Require.named(remedy, "remedy");
    }
}
