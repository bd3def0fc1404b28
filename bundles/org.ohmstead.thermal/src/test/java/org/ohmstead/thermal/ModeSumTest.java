// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class ModeSumTest {
    /** With x = e^-t, terms of rates 1, 2, 3 and 4 are a polynomial in x, so that turning points can be chosen. */
    private static ModeSum turningAt(double first, double second, double third) {
        double a = Math.exp(-first);
        double b = Math.exp(-second);
        double c = Math.exp(-third);
        // The integral of -(x - a)(x - b)(x - c).
        return ModeSum.of(0, new double[] {1, 1.0 / 2, 1.0 / 3, 1.0 / 4}, new double[] {
            a * b * c, -(a * b + a * c + b * c) / 2, (a + b + c) / 3, -0.25
        });
    }

    // The slope over x is -(x-a)(x-b)(x-c), positive for x just below a; as t rises x falls, so the sum has its tops at
    // a and c.
    @Test
    void findsTheHighestOfSeveralTops() {
        ModeSum sum = turningAt(0.2, 0.7, 3);
        double top = sum.at(0.2) > sum.at(3) ? 0.2 : 3;
        assertEquals(top, sum.highestAt(Double.POSITIVE_INFINITY), 1e-6);
        assertEquals(0.2, sum.highestAt(0.9), 1e-6);
    }

    @Test
    void isNeverBelowAFineSampling() {
        Random random = new Random(5);
        for (int run = 0; run < 200; run++) {
            int count = 1 + random.nextInt(7);
            double[] taus = new double[count];
            double[] amplitudes = new double[count];
            for (int i = 0; i < count; i++) {
                taus[i] = Math.pow(10, -3 + 7 * random.nextDouble());
                amplitudes[i] = random.nextGaussian();
            }
            ModeSum sum = ModeSum.of(random.nextGaussian(), taus, amplitudes);
            double end = Math.pow(10, -2 + 6 * random.nextDouble());
            double highest = sum.at(sum.highestAt(end));
            double sampled = Math.max(sum.at(0), sum.at(end));
            for (int i = 0; i <= 2000; i++) {
                sampled = Math.max(sampled, sum.at(end * Math.pow(10, -9 + 9 * i / 2000.0)));
            }
            assertTrue(highest >= sampled - 1e-12, "run " + run);
            assertTrue(highest <= sampled + 0.01, "run " + run + ": " + highest + " above " + sampled);
        }
    }

    @Test
    void findsTheFirstCrossingEvenWhenItComesBack() {
        ModeSum sum = turningAt(0.2, 0.7, 3);
        double level = (sum.at(0.2) + Math.max(sum.at(0), sum.at(0.7))) / 2;
        double when = sum.firstAtOrAbove(level).orElseThrow();
        assertTrue(when < 0.2, "first on the way up to the first top, not " + when);
        assertEquals(level, sum.at(when), 1e-12);
        assertTrue(sum.firstAtOrAbove(sum.at(sum.highestAt(Double.POSITIVE_INFINITY)) + 1e-6)
                .isEmpty());
    }

    @Test
    void agreesWithASampledFirstCrossing() {
        Random random = new Random(6);
        int crossed = 0;
        for (int run = 0; run < 200; run++) {
            int count = 2 + random.nextInt(5);
            double[] taus = new double[count];
            double[] amplitudes = new double[count];
            for (int i = 0; i < count; i++) {
                taus[i] = Math.pow(10, 2 * random.nextDouble());
                amplitudes[i] = random.nextGaussian();
            }
            ModeSum sum = ModeSum.of(0, taus, amplitudes);
            double level = sum.at(0) - 0.3;
            double sampled = Double.POSITIVE_INFINITY;
            for (int i = 0; i < 20_000 && sampled == Double.POSITIVE_INFINITY; i++) {
                sampled = sum.at(0.05 * i) <= level ? 0.05 * i : sampled;
            }
            double found = sum.firstAtOrBelow(level).orElse(Double.POSITIVE_INFINITY);
            if (sampled < Double.POSITIVE_INFINITY) {
                crossed++;
                assertTrue(found <= sampled && found >= sampled - 0.05 - 1e-9, found + " for " + sampled);
            }
        }
        assertTrue(crossed > 50, "only " + crossed + " crossings");
    }

    @Test
    void isConstantWithoutTerms() {
        ModeSum sum = ModeSum.of(3, new double[0], new double[0]);
        assertEquals(3, sum.at(sum.highestAt(Double.POSITIVE_INFINITY)));
        assertTrue(sum.firstAtOrAbove(4).isEmpty());
        assertEquals(0, sum.firstAtOrAbove(3).orElseThrow());
    }
}
