// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/**
 * The answer of the supply side when the question has none: why, and what to do about it.
 *
 * @param reason what is the matter, a sentence
 * @param remedy what to do, a sentence
 */
public record SupplyNoSolution(String reason, String remedy)
        implements SupplyAnswer, CableHeating, CableCurrent, CableDuration, FuseAnswer {
    public SupplyNoSolution {
        Checks.named(reason, "reason");
        Checks.named(remedy, "remedy");
    }
}
