// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.util.OptionalDouble;

/**
 * One line of the table.
 *
 * @param name short name, without spaces
 * @param about what was done, in a few words
 * @param ours what was measured of ours; empty where it could not do the job
 * @param reference the same of the reference; empty where the goal is a number and not a comparison
 * @param unit unit of both
 * @param goal what is to be reached
 * @param remark what else a reader should know; empty if nothing
 */
public record Outcome(
        String name,
        String about,
        OptionalDouble ours,
        OptionalDouble reference,
        String unit,
        Goal goal,
        String remark) {
    /** Checks that the name has no spaces. */
    public Outcome {
        if (name.isEmpty() || name.chars().anyMatch(Character::isWhitespace)) {
            throw new IllegalArgumentException("name must not be empty or have spaces, but is \"" + name + "\"");
        }
    }

    /** Returns a line for what was done in a time, ours and the reference's in seconds. */
    public static Outcome seconds(String name, String about, double ours, double reference, Goal goal, String remark) {
        return new Outcome(name, about, OptionalDouble.of(ours), OptionalDouble.of(reference), "s", goal, remark);
    }

    /** Returns whether ours did the job and reached the goal. */
    public boolean isMet() {
        return ours.isPresent() && goal.isMet(ours.getAsDouble(), reference);
    }
}
