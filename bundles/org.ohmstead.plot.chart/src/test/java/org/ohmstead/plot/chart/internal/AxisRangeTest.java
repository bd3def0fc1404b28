// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.chart.internal.AxisRange.Ends;

class AxisRangeTest {
    private static final double MARGIN = 0.03;

    private static Ends rounded(Axis axis, double... values) {
        AxisRange range = new AxisRange(axis);
        for (double value : values) {
            range.include(value);
        }
        return range.ends(MARGIN, true);
    }

    @Test
    void powersStartAtZeroAndEndAtARoundNumber() {
        assertEquals(new Ends(0, 450), rounded(Axis.linear("Power", "W"), 20, 421));
    }

    @Test
    void valuesFarFromZeroDoNotStartThere() {
        Ends ends = rounded(Axis.linear("Supply", "V"), 13.1, 14.4);
        assertTrue(ends.lower() > 12.5 && ends.lower() <= 13.1 && ends.upper() >= 14.4, ends.toString());
    }

    @Test
    void logRangeEndsAtOneTwoOrFive() {
        Ends ends = rounded(Axis.log("THD", "%"), 0.0065, 11);
        assertEquals(0.005, ends.lower(), 1e-12);
        assertEquals(20, ends.upper(), 1e-9);
    }

    @Test
    void fixedEndsStayAsTheyAre() {
        Ends ends = rounded(Axis.linear("Level", "dB").withRange(-113, 7), -300, 40);
        assertEquals(new Ends(-113, 7), ends);
    }

    @Test
    void oneValueOrNoneStillGivesARange() {
        assertEquals(new Ends(0, 1), rounded(Axis.linear("a", "")));
        Ends one = rounded(Axis.linear("a", ""), 5);
        assertTrue(one.lower() < 5 && one.upper() > 5, one.toString());
        Ends zero = rounded(Axis.linear("a", ""), 0);
        assertTrue(zero.lower() < zero.upper(), zero.toString());
        Ends log = rounded(Axis.log("a", ""), 3);
        assertTrue(log.lower() < 3 && log.lower() > 0 && log.upper() > 3, log.toString());
    }

    @Test
    void fixedEndBeyondAllDataStillGivesARange() {
        Ends above = rounded(Axis.linear("a", "").withLower(100), 1, 2);
        assertTrue(above.lower() == 100 && above.upper() > 100, above.toString());
        Ends below = rounded(Axis.log("a", "").withUpper(0.1), 1, 2);
        assertTrue(below.upper() == 0.1 && below.lower() > 0 && below.lower() < 0.1, below.toString());
    }
}
