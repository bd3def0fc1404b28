// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class ExponentialSumTest {
    @Test
    void findsThePeakOfTwoExponentials() {
        // Closed form: A (e^(-t/a) - e^(-t/b)) is highest at t = ln(a/b) a b / (a - b).
        double slow = 400;
        double fast = 30;
        double at = Math.log(slow / fast) * slow * fast / (slow - fast);
        double peak = 50 * (Math.exp(-at / slow) - Math.exp(-at / fast));
        ExponentialSum sum = new ExponentialSum();
        sum.reset(7);
        sum.add(50, slow);
        sum.add(-50, fast);
        assertEquals(7 + peak, sum.highest(2000), 1e-9);
        assertEquals(7 + peak, sum.highestForEver(), 1e-9);
        assertEquals(sum.value(10), sum.highest(10), 1e-12);
    }

    @Test
    void tendsToItsConstantForEver() {
        ExponentialSum sum = new ExponentialSum();
        sum.reset(85);
        sum.add(-60, 600);
        // Closed form: 85 - 60 e^(-t/600) rises to 85.
        assertEquals(85, sum.highestForEver(), 1e-9);
        assertEquals(85 - 60 * Math.exp(-0.5), sum.highest(300), 1e-12);
    }

    @Test
    void isNeverBelowAFineGridAndNeverFarAbove() {
        SplittableRandom random = new SplittableRandom(11);
        for (int round = 0; round < 2000; round++) {
            ExponentialSum sum = new ExponentialSum();
            sum.reset(random.nextDouble(-50, 50));
            int terms = 1 + random.nextInt(6);
            for (int i = 0; i < terms; i++) {
                sum.add(random.nextDouble(-40, 40), Math.exp(random.nextDouble(0, 7)));
            }
            double end = Math.exp(random.nextDouble(0, 8));
            double highest = sum.highest(end);
            double grid = Double.NEGATIVE_INFINITY;
            for (int i = 0; i <= 2000; i++) {
                grid = Math.max(grid, sum.value(end * i / 2000));
            }
            assertTrue(highest >= grid - 1e-12, "round " + round);
            // Between the points of the grid at most slope times spacing; the slope is at most sum of |a| / tau.
            assertTrue(highest <= grid + 240 * end / 2000, "round " + round);
        }
    }
}
