// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.lessons.BuiltIn.at;
import static org.ohmstead.lessons.BuiltIn.figure;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.plot.PlotPoint;

class BenchNumbersTest {
    private static String levelOf(double peakRatio) {
        return Double.toString(20 * Math.log10(peakRatio));
    }

    /** Closed form of class B, rails of 30 V, 4 ohm: P_in = 2 m V^2 / (pi R), P_out = m^2 V^2 / (2 R), by another program. */
    @ParameterizedTest
    @CsvSource({
        "0.3535533906, 14.0625, 50.642793, 36.580293, 27.768018, more",
        "0.5773502692, 37.5, 82.699334, 45.199334, 45.344984, more",
        "0.5, 28.125, 71.619724, 43.494724, 39.269908, more",
        "0.6366197724, 45.594533, 91.189065, 45.594533, 50, more",
        "0.8, 72, 114.591559, 42.591559, 62.831853, more",
        "1, 112.5, 143.239449, 30.739449, 78.539816, same",
        "0.2, 4.5, 28.647890, 24.147890, 15.707963, less",
    })
    void heatIsGreatestBelowFullPower(
            double peakRatio, double out, double in, double heat, double percent, String verdict) {
        LessonResult result = at("heat-and-duty", "level=" + levelOf(peakRatio), "rails=30", "load=4");
        assertEquals(out, figure(result, "output"), 1e-5);
        assertEquals(in, figure(result, "input"), 1e-5);
        assertEquals(heat, figure(result, "heat"), 1e-5);
        assertEquals(percent, figure(result, "efficiency"), 1e-5);
        // 2 V^2 / (pi^2 R) at its worst.
        assertEquals(45.594533, figure(result, "worst"), 1e-5);
        assertEquals(verdict, ((Answer.Choice) result.answer()).optionId());
    }

    @Test
    void theSinkWarmsAsAFirstOrderBody() {
        LessonResult result = at("heat-and-duty", "level=0", "rails=30", "load=4", "sink=1.2", "duty=50");
        double rise = 30.739449 * 1.2;
        // 1.2 K/W and 500 J/K: tau = 600 s; after tau 63.21206 % of the rise (1 - 1/e), with half of the time on half
        // of it.
        double[] after = result.pictures().get(1).plot().series().stream()
                .mapToDouble(series -> series.points().stream()
                        .filter(point -> Math.abs(point.x() - 10) < 1e-9)
                        .mapToDouble(PlotPoint::y)
                        .findFirst()
                        .orElseThrow())
                .toArray();
        assertEquals(25 + 0.6321205588 * rise, after[0], 1e-5);
        assertEquals(25 + 0.6321205588 * rise / 2, after[1], 1e-5);
        assertEquals(25 + rise / 2, figure(result, "mean-celsius"), 1e-5);
        // Pulses of 30 s in 60 s for ever: (1 - e^(-30/600)) / (1 - e^(-60/600)) = 0.5124974 of the steady rise at
        // their end.
        assertEquals(25 + 0.5124974 * rise, figure(result, "peak-celsius"), 1e-4);
    }

    @Test
    void aHotSinkBringsACaution() {
        assertTrue(at("heat-and-duty", "duty=5", "sink=0.2").cautions().isEmpty());
        assertEquals(1, at("heat-and-duty", "duty=100", "sink=3").cautions().size());
    }

    @Test
    void leadsMakeThePowerTooHigh() {
        // Copper of 4 mm^2 at 20 C (1/58 ohm mm^2/m, IEC 60028): 2 * 1.16 m / (58 * 4) = 0.01 ohm, and 0.04 ohm of
        // contacts.
        LessonResult result = at("four-wires", "load=4", "length=1.16", "section=mm2-4", "contacts=0.04", "volts=20");
        assertEquals(0.05, figure(result, "leads"), 1e-12);
        // (4.05 / 4)^2 - 1 = 2.515625 %; r / R = 1.25 %; the load gets 0.9754610 of 100 W.
        assertEquals(2.515625, figure(result, "overstated"), 1e-9);
        assertEquals(1.25, figure(result, "terminal-overstated"), 1e-9);
        assertEquals(100, figure(result, "claimed"), 1e-9);
        assertEquals(97.54610, figure(result, "real"), 1e-5);
        assertEquals(4.05, figure(result, "two-wire"), 1e-12);
        assertEquals(4, figure(result, "four-wire"), 1e-12);
        // Power balance at the terminals: 20^2 / 4.05 W.
        assertEquals(400 / 4.05, figure(result, "real") + figure(result, "lead-watts"), 1e-9);
    }

    @Test
    void uncertaintyOfAPowerByPropagation() {
        LessonResult result = at(
                "uncertainty-and-verdicts",
                "volts=20",
                "load=4",
                "meter=0.5",
                "counts=0.03",
                "tolerance=1",
                "rated=100");
        // GUM 5.1.2: u(V) = 0.13 / sqrt 3, u(R) = 0.04 / sqrt 3; u(P) = 0.9469248 W, by another program.
        assertEquals(100, figure(result, "power"), 1e-9);
        assertEquals(0.9469248, figure(result, "standard"), 1e-7);
        // JCGM 106: at the limit itself the probability is one half; the guard band for 95 % is 1.6448536 u.
        assertEquals(50, figure(result, "probability"), 1e-9);
        assertEquals(1.6448536 * 0.9469248, figure(result, "guard"), 1e-6);
        // The 95 % interval of a normal distribution is 1.9599640 u to each side.
        assertEquals(1.9599640 * 0.9469248, figure(result, "expanded"), 1e-6);
    }

    /** With u = 0.0075 of P the 95 % guard band is about 1.6 W around 100 W, so the verdict turns near 101.6 W and 98.4 W. */
    @ParameterizedTest
    @CsvSource({"20.17, meets", "20.1, undecided", "19.9, undecided", "19.83, falls-short"})
    void verdictsNeedAGuardBand(String volts, String verdict) {
        LessonResult result = at("uncertainty-and-verdicts", "volts=" + volts);
        assertEquals(verdict, ((Answer.Choice) result.answer()).optionId());
    }

    @Test
    void perfectMetersAlwaysDecide() {
        LessonResult result = at("uncertainty-and-verdicts", "volts=20.01", "meter=0", "counts=0", "tolerance=0");
        assertEquals("meets", ((Answer.Choice) result.answer()).optionId());
        assertEquals(0, figure(result, "standard"), 0);
    }
}
