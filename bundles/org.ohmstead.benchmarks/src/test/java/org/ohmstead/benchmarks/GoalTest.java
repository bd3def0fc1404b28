// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class GoalTest {
    private static final OptionalDouble TEN = OptionalDouble.of(10);

    @Test
    void fasterIsTheReferenceOverOurs() {
        Goal goal = new Goal.Faster(5);
        assertEquals(OptionalDouble.of(5), goal.ratio(2, TEN));
        assertTrue(goal.isMet(2, TEN));
        assertFalse(goal.isMet(2.01, TEN));
        assertEquals("5 x faster", goal.text("s"));
        assertEquals("5.00 x faster", goal.ratioText(2, TEN));
    }

    @Test
    void timesAsLongIsOursOverTheReference() {
        Goal goal = new Goal.TimesAsLong(1.3);
        assertEquals(1.2, goal.ratio(12, TEN).orElseThrow(), 1e-12);
        assertTrue(goal.isMet(13, TEN));
        assertFalse(goal.isMet(13.1, TEN));
        assertEquals("<= 1.30 x the time", goal.text("s"));
    }

    @Test
    void aLimitNeedsNoReference() {
        assertTrue(new Goal.AtMost(16).isMet(16, OptionalDouble.empty()));
        assertFalse(new Goal.AtMost(16).isMet(16.1, OptionalDouble.empty()));
        assertTrue(new Goal.AtLeast(200).isMet(200, OptionalDouble.empty()));
        assertFalse(new Goal.AtLeast(200).isMet(199, OptionalDouble.empty()));
        assertEquals("0.50 of the limit", new Goal.AtMost(16).ratioText(8, OptionalDouble.empty()));
    }

    @Test
    void aComparisonWithoutItsReferenceIsNotMet() {
        assertFalse(new Goal.Faster(1).isMet(1, OptionalDouble.empty()));
        assertFalse(new Goal.TimesAsLong(1).isMet(1, OptionalDouble.empty()));
        assertEquals("-", new Goal.Faster(1).ratioText(1, OptionalDouble.empty()));
        assertEquals("4.00 x faster", new Goal.Shown().ratioText(2.5, TEN));
        assertEquals("2.50 x the time", new Goal.Shown().ratioText(25, TEN));
    }
}
