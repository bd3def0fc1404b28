// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Range;

class HeatBandTest {
    private static final double[] TIMES = {0, 60, 300, 1200, 1e6};

    private static HeatCase body(double[] choice) {
        return new HeatCase(FosterChain.of(choice[0], choice[1]).model(), PowerProfile.constant(choice[2]), choice[3]);
    }

    // Closed form of one body at the ends: R high and C low is hottest, R low and C high coolest.
    @Test
    void spansTheEndsOfTheRangesWhileItWarms() {
        HeatBand band = HeatBand.of(
                List.of(new Range(1, 1.4), new Range(400, 600), Range.of(50), new Range(20, 30)), HeatBandTest::body);
        for (HeatBandPoint point : band.celsius(0, TIMES)) {
            double t = point.seconds();
            assertEquals(30 + 70 * -Math.expm1(-t / (1.4 * 400)), point.highCelsius(), 1e-9);
            assertEquals(20 + 50 * -Math.expm1(-t / (1.0 * 600)), point.lowCelsius(), 1e-9);
            assertEquals(25 + 60 * -Math.expm1(-t / (1.2 * 500)), point.middleCelsius(), 1e-9);
        }
    }

    @Test
    void isALineWhenEverythingIsKnown() {
        HeatBand band =
                HeatBand.of(List.of(Range.of(1.2), Range.of(500), Range.of(50), Range.of(25)), HeatBandTest::body);
        HeatBandPoint point = band.celsius(0, new double[] {600}).get(0);
        assertEquals(62.927234, point.lowCelsius(), 1e-6);
        assertEquals(62.927234, point.highCelsius(), 1e-6);
    }

    // Whatever lies within the ranges gives a course within the band, while the power does not change.
    @Test
    void holdsEverythingWithin() {
        List<Range> unknowns = List.of(new Range(1, 1.4), new Range(400, 600), new Range(30, 60), new Range(20, 30));
        List<HeatBandPoint> band = HeatBand.of(unknowns, HeatBandTest::body).celsius(0, TIMES);
        Random random = new Random(9);
        for (int run = 0; run < 200; run++) {
            double[] choice = unknowns.stream()
                    .mapToDouble(range -> range.low() + (range.high() - range.low()) * random.nextDouble())
                    .toArray();
            HeatCase within = body(choice);
            double[] course = within.profile()
                    .risesKelvin(within.model(), 0, within.model().cold(), TIMES);
            for (int i = 0; i < TIMES.length; i++) {
                double celsius = within.airCelsius() + course[i];
                assertTrue(celsius >= band.get(i).lowCelsius() - 1e-9
                        && celsius <= band.get(i).highCelsius() + 1e-9);
            }
        }
    }

    // The closed form of one body at the end of 600 s; afterwards it cools.
    @Test
    void findsTheRangeOfThePeak() {
        PowerProfile pulse = new PowerProfile(List.of(new PowerStep(600, 50), new PowerStep(5000, 0)));
        HeatBand band = HeatBand.of(
                List.of(new Range(1, 1.4)),
                choice -> new HeatCase(FosterChain.of(choice[0], 500).model(), pulse, 25));
        Range peak = band.peakCelsius(0);
        assertEquals(25 + 50 * -Math.expm1(-600 / 500.0), peak.low(), 1e-9);
        assertEquals(25 + 70 * -Math.expm1(-600 / 700.0), peak.high(), 1e-9);
    }

    @Test
    void refusesTooManyUnknowns() {
        List<Range> many = Collections.nCopies(9, new Range(1, 2));
        assertThrows(IllegalArgumentException.class, () -> HeatBand.of(many, HeatBandTest::body));
    }
}
