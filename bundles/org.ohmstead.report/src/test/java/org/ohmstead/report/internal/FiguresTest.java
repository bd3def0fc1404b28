// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class FiguresTest {
    @Test
    void signsDifferences() {
        assertEquals("+0.38", Figures.signed(0.381, 2));
        assertEquals("\u22120.49", Figures.signed(-0.489, 2));
        assertEquals("0.00", Figures.signed(-0.0004, 2));
    }

    @Test
    void dropsZerosThatSayNothing() {
        assertEquals("4\u00a0\u03a9", Figures.ohms(4));
        assertEquals("1.33\u00a0\u03a9", Figures.ohms(1.33));
        assertEquals("14.4\u00a0V", Figures.volts(14.4));
        assertEquals("1\u00a0kHz", Figures.hertz(1000));
        assertEquals("50\u00a0Hz", Figures.hertz(50));
        assertEquals("100", Figures.brief(100, 4));
    }

    @Test
    void printsRatiosInPercent() {
        assertEquals("95", Figures.percent(0.95, 4));
        assertEquals("99.73", Figures.percent(0.9973, 4));
        assertEquals("1", Figures.percent(0.01, 3));
    }

    @Test
    void printsADashForWhatWasNotRead() {
        assertEquals("\u2013", Figures.fixed(OptionalDouble.empty(), 1));
    }
}
