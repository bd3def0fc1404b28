// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class TableTest {
    private static final Outcome FAST = Outcome.seconds("fit", "a fit", 0.0005, 0.0125, new Goal.Faster(20), "");
    private static final Outcome SLOW = Outcome.seconds("fft-8", "eight", 3e-6, 1e-6, new Goal.TimesAsLong(2), "");
    private static final Outcome UNABLE = new Outcome(
            "hour", "an hour", OptionalDouble.empty(), OptionalDouble.empty(), "MB", new Goal.AtMost(256), "");
    private static final Outcome SHOWN = new Outcome(
            "thinned", "both", OptionalDouble.of(12.34), OptionalDouble.empty(), "ms", new Goal.Shown(), "");

    @Test
    void showsEachRowWithItsRatioAndGoal() {
        assertEquals(
                """
                row      Ohmstead  reference  ratio            goal
                fit        500 us    12.5 ms  25 x faster      20 x faster      met
                fft-8     3.00 us    1.00 us  3.00 x the time  <= 2 x the time  missed
                hour            -          -  -                <= 256 MB        missed
                thinned   12.3 ms          -  -                -
                """,
                Table.text(List.of(FAST, SLOW, UNABLE, SHOWN)));
    }

    @Test
    void hasALineForPrograms() {
        assertEquals(
                "bench row=fit ours=0.000500000 reference=0.0125000 unit=s ratio=25.0000 goal=\"20 x faster\" met=yes",
                Table.machineLine(FAST));
        assertEquals("bench row=hour unit=MB goal=\"<= 256 MB\" met=no", Table.machineLine(UNABLE));
        assertEquals("bench row=thinned ours=12.3400 unit=ms goal=\"-\" met=none", Table.machineLine(SHOWN));
    }

    @Test
    void refusesANameThatIsNoWord() {
        assertThrows(
                IllegalArgumentException.class, () -> Outcome.seconds("two words", "", 1, 1, new Goal.Shown(), ""));
    }
}
