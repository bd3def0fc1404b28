// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.util.Random;
import org.ohmstead.model.Accuracy;

/** How far one meter is off: a gain and an offset that stay, within half of what its specification allows, noise, and rounding. */
final class MeterErrors {
    private final double gainRatio;
    private final double fixed;
    private final double noiseFixed;
    private final double resolution;
    private final Random random;

    private MeterErrors(double gainRatio, double fixed, double noiseFixed, double resolution, Random random) {
        this.gainRatio = gainRatio;
        this.fixed = fixed;
        this.noiseFixed = noiseFixed;
        this.resolution = resolution;
        this.random = random;
    }

    /** Makes a meter without errors. */
    static MeterErrors none() {
        return new MeterErrors(1, 0, 0, 0, new Random(0));
    }

    /** Makes a meter that keeps a specification. */
    static MeterErrors within(Accuracy accuracy, long seed) {
        Random random = new Random(seed);
        double gainRatio = 1 + accuracy.readingRatio() * (random.nextDouble() - 0.5);
        double fixed = accuracy.fixed() * (random.nextDouble() - 0.5);
        return new MeterErrors(gainRatio, fixed, accuracy.fixed() / 20, accuracy.resolution(), random);
    }

    double gainRatio() {
        return gainRatio;
    }

    double shown(double value) {
        double shown = value * gainRatio + fixed + noiseFixed * random.nextGaussian();
        return resolution > 0 ? Math.rint(shown / resolution) * resolution : shown;
    }
}
