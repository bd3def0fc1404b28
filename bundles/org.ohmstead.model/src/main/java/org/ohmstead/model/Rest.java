// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * A rest that the user put before a step, so that things cool down.
 *
 * @param stepId the step before which it lies
 * @param seconds how long, at least 0
 */
public record Rest(String stepId, double seconds) {
    public Rest {
        Checks.named(stepId, "stepId");
        Checks.notNegative(seconds, "seconds");
    }
}
