// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.util.SplittableRandom;

/**
 * Dither: to each sample, before it is rounded, the difference of two evenly spread random numbers of up to one step is added. The error of
 * rounding then is noise that does not depend on the signal, of a quarter of a step squared (S. P. Lipshitz et al., J. Audio Eng. Soc. 40 (1992)
 * 355-375).
 */
final class Dither {
    private final SplittableRandom random;
    private final double step;

    Dither(long seed, double step) {
        this.random = new SplittableRandom(seed);
        this.step = step;
    }

    void add(double[] block, int count) {
        if (step == 0) {
            return;
        }
        for (int i = 0; i < count; i++) {
            block[i] += step * (random.nextDouble() - random.nextDouble());
        }
    }
}
