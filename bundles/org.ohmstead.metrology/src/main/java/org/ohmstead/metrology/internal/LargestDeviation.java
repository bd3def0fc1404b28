// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.internal;

import java.util.Arrays;
import org.hipparchus.special.Gamma;

/**
 * The distribution of the largest standardised deviation in normal samples, by the recurrence of F. E. Grubbs (Annals
 * of Mathematical Statistics 21, 1950) from one sample size to the next. With S² the sum of squares about the mean, a
 * deviation is u = (x - mean)/S sqrt(n/(n - 1)) = sin(angle), -1 to 1; without x the sum of squares is S² cos²(angle).
 */
public final class LargestDeviation {

    private static final int STEPS = 4096;
    private static final double STEP = Math.PI / 2 / STEPS;

    /** below[k] is the probability that the largest of the sample lies at an angle of at most k STEP. */
    private final double[] below;

    private LargestDeviation(double[] below) {
        this.below = below;
    }

    /** Returns the distribution for a sample of at least 2. */
    public static LargestDeviation of(int count) {
        double[] below = new double[STEPS + 1];
        // In a sample of 2 the larger one always has u = 1.
        below[STEPS] = 1;
        if (count >= 3) {
            Arrays.setAll(below, k -> Math.max(0, 3 / Math.PI * (k * STEP - Math.PI / 6)));
        }
        for (int n = 4; n <= count; n++) {
            LargestDeviation smaller = new LargestDeviation(below);
            double[] next = new double[STEPS + 1];
            double before = 0;
            for (int k = 1; k <= STEPS; k++) {
                double angle = k * STEP;
                double density = n * density(angle, n) * smaller.below(remaining(angle, n));
                next[k] = Math.min(1, next[k - 1] + STEP * (before + density) / 2);
                before = density;
            }
            below = next;
        }
        return new LargestDeviation(below);
    }

    /** Returns the probability that the largest deviation lies at an angle of at most this, 0 to pi/2. */
    public double below(double angle) {
        double place = Math.max(0, angle / STEP);
        int k = (int) place;
        if (k >= STEPS) {
            return below[STEPS];
        }
        return below[k] + (place - k) * (below[k + 1] - below[k]);
    }

    /** Returns the largest angle that the others can have among themselves if none lies above this largest one. */
    public static double remaining(double angle, int count) {
        double sine = Math.tan(angle) * Math.sqrt(count / (count - 2.0));
        return sine >= 1 ? Math.PI / 2 : Math.asin(sine);
    }

    /** Returns the density of one deviation's angle in a sample of at least 3, -pi/2 to pi/2. */
    public static double density(double angle, int count) {
        return Math.exp(Gamma.logGamma((count - 1) / 2.0) - Gamma.logGamma((count - 2) / 2.0))
                / Math.sqrt(Math.PI)
                * Math.pow(Math.cos(angle), count - 3.0);
    }
}
