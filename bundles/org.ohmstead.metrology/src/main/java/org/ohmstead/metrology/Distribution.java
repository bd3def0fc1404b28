// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.util.random.RandomGenerator;
import org.ohmstead.metrology.internal.Checks;

/** What is known about one input of a {@link MonteCarlo} calculation (JCGM 101 6.4). */
public sealed interface Distribution {

    /** Returns one random draw. */
    double draw(RandomGenerator random);

    /**
     * A normal distribution (JCGM 101 6.4.7).
     *
     * @param mean the mean
     * @param standardDeviation the standard deviation, at least 0
     */
    record Normal(double mean, double standardDeviation) implements Distribution {

        /** Checks the ranges given above. */
        public Normal {
            Checks.finite("mean", mean);
            Checks.notNegative("standardDeviation", standardDeviation);
        }

        @Override
        public double draw(RandomGenerator random) {
            return mean + standardDeviation * random.nextGaussian();
        }
    }

    /**
     * A rectangular distribution (JCGM 101 6.4.2).
     *
     * @param lower the lower limit, not above the upper one
     * @param upper the upper limit
     */
    record Rectangular(double lower, double upper) implements Distribution {

        /** Checks the ranges given above. */
        public Rectangular {
            checkLimits(lower, upper);
        }

        @Override
        public double draw(RandomGenerator random) {
            return lower + (upper - lower) * random.nextDouble();
        }
    }

    /**
     * A symmetric triangular distribution (JCGM 101 6.4.5).
     *
     * @param lower the lower limit, not above the upper one
     * @param upper the upper limit
     */
    record Triangular(double lower, double upper) implements Distribution {

        /** Checks the ranges given above. */
        public Triangular {
            checkLimits(lower, upper);
        }

        @Override
        public double draw(RandomGenerator random) {
            return lower + (upper - lower) / 2 * (random.nextDouble() + random.nextDouble());
        }
    }

    /**
     * An arcsine distribution: a quantity that swings sinusoidally between the limits, caught at a random instant
     * (JCGM 101 6.4.6).
     *
     * @param lower the lower limit, not above the upper one
     * @param upper the upper limit
     */
    record Arcsine(double lower, double upper) implements Distribution {

        /** Checks the ranges given above. */
        public Arcsine {
            checkLimits(lower, upper);
        }

        @Override
        public double draw(RandomGenerator random) {
            return (lower + upper) / 2 + (upper - lower) / 2 * Math.sin(2 * Math.PI * random.nextDouble());
        }
    }

    /**
     * A scaled and shifted t distribution: what repeated readings tell about their mean (JCGM 101 6.4.9).
     *
     * @param estimate the mean of the readings, the standard uncertainty of that mean, and its finite degrees of
     *     freedom
     */
    record ScaledStudent(Estimate estimate) implements Distribution {

        /** Checks that the degrees of freedom are finite. */
        public ScaledStudent {
            Checks.finite("degreesOfFreedom", estimate.degreesOfFreedom());
        }

        @Override
        public double draw(RandomGenerator random) {
            // Polar method (R. W. Bailey, Mathematics of Computation 62, 1994): exact for any degrees of freedom.
            double u;
            double squares;
            do {
                u = 2 * random.nextDouble() - 1;
                double v = 2 * random.nextDouble() - 1;
                squares = u * u + v * v;
            } while (squares <= 0 || squares > 1);
            double freedom = estimate.degreesOfFreedom();
            double t = u * Math.sqrt(freedom * (Math.pow(squares, -2 / freedom) - 1) / squares);
            return estimate.value() + estimate.standardUncertainty() * t;
        }
    }

    private static void checkLimits(double lower, double upper) {
        Checks.finite("lower", lower);
        Checks.finite("upper", upper);
        if (lower > upper) {
            throw new IllegalArgumentException("lower is " + lower + " but must not be above upper, " + upper + ".");
        }
    }
}
