// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.internal;

import java.util.random.RandomGenerator;
import org.hipparchus.random.Well19937c;

/**
 * The WELL19937c generator behind the JDK's interface. Unlike the JDK's own it gives the same numbers on every Java
 * version.
 */
public final class Well implements RandomGenerator {

    private final Well19937c generator;

    /** Starts the sequence that belongs to a seed. */
    public Well(long seed) {
        generator = new Well19937c(seed);
    }

    @Override
    public long nextLong() {
        return generator.nextLong();
    }

    @Override
    public double nextDouble() {
        return generator.nextDouble();
    }

    @Override
    public double nextGaussian() {
        return generator.nextGaussian();
    }
}
