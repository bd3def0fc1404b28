// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.Sentences;
import org.ohmstead.metrology.internal.StudentT;

/**
 * The values that a quantity is allowed to have (JCGM 106:2012, clause 3.3); also the measured values that are accepted
 * (an acceptance interval). The limits themselves are allowed.
 */
public sealed interface ToleranceInterval {

    /** Returns whether the value is allowed. */
    boolean contains(double value);

    /**
     * Returns the conformance probability, 0 to 1: how likely the true value is allowed, given a measured value (JCGM
     * 106, clause 7). Student's t distribution takes the place of the normal one if the measured value has finite
     * degrees of freedom.
     */
    double probabilityWithin(Estimate measured);

    /**
     * Returns this interval with every limit moved inwards by a guard band, or outwards if it is negative (JCGM 106
     * 8.3); nothing if no value would be left.
     *
     * @param guardBand the width of the guard band, in the unit of the limits
     */
    Optional<ToleranceInterval> narrowedBy(double guardBand);

    /** Returns the interval in words that go after "must be", e.g. "at least 95 W"; the unit may be empty. */
    String words(String unit);

    /**
     * Only a lower limit, as for output power.
     *
     * @param limit the lowest allowed value
     */
    record AtLeast(double limit) implements ToleranceInterval {

        /** Checks that the limit is finite. */
        public AtLeast {
            Checks.finite("limit", limit);
        }

        @Override
        public boolean contains(double value) {
            return value >= limit;
        }

        @Override
        public double probabilityWithin(Estimate measured) {
            double margin = measured.value() - limit;
            if (measured.standardUncertainty() <= 0) {
                return margin >= 0 ? 1 : 0;
            }
            return StudentT.below(margin / measured.standardUncertainty(), measured.degreesOfFreedom());
        }

        @Override
        public Optional<ToleranceInterval> narrowedBy(double guardBand) {
            return Optional.of(new AtLeast(limit + guardBand));
        }

        @Override
        public String words(String unit) {
            return Sentences.text("tolerance.least", Sentences.quantity(limit, unit));
        }
    }

    /**
     * Only an upper limit, as for distortion.
     *
     * @param limit the highest allowed value
     */
    record AtMost(double limit) implements ToleranceInterval {

        /** Checks that the limit is finite. */
        public AtMost {
            Checks.finite("limit", limit);
        }

        @Override
        public boolean contains(double value) {
            return value <= limit;
        }

        @Override
        public double probabilityWithin(Estimate measured) {
            return fractionBelow(limit, measured, false);
        }

        @Override
        public Optional<ToleranceInterval> narrowedBy(double guardBand) {
            return Optional.of(new AtMost(limit - guardBand));
        }

        @Override
        public String words(String unit) {
            return Sentences.text("tolerance.most", Sentences.quantity(limit, unit));
        }
    }

    /**
     * A lower and an upper limit, as for a supply voltage.
     *
     * @param lower the lowest allowed value
     * @param upper the highest allowed value, not below the lower one
     */
    record Within(double lower, double upper) implements ToleranceInterval {

        /** Checks the ranges given above. */
        public Within {
            Checks.finite("lower", lower);
            Checks.finite("upper", upper);
            if (lower > upper) {
                throw new IllegalArgumentException(
                        "lower is " + lower + " but must not be above upper, " + upper + ".");
            }
        }

        @Override
        public boolean contains(double value) {
            return value >= lower && value <= upper;
        }

        @Override
        public double probabilityWithin(Estimate measured) {
            return Math.max(0, fractionBelow(upper, measured, false) - fractionBelow(lower, measured, true));
        }

        @Override
        public Optional<ToleranceInterval> narrowedBy(double guardBand) {
            double low = lower + guardBand;
            double high = upper - guardBand;
            return low <= high ? Optional.of(new Within(low, high)) : Optional.empty();
        }

        @Override
        public String words(String unit) {
            return Sentences.text("tolerance.between", Sentences.number(lower), Sentences.quantity(upper, unit));
        }

        /** Returns the middle of the interval. */
        public double middle() {
            return lower + (upper - lower) / 2;
        }

        /**
         * Returns the measurement capability index T/(4 u), the width of the interval over that of the measurement's 95
         * % interval (JCGM 106, clause 7); nothing if u is zero.
         *
         * @param standardUncertainty u, at least 0
         */
        public OptionalDouble capabilityIndex(double standardUncertainty) {
            Checks.notNegative("standardUncertainty", standardUncertainty);
            double index = (upper - lower) / (4 * standardUncertainty);
            return Double.isFinite(index) ? OptionalDouble.of(index) : OptionalDouble.empty();
        }
    }

    private static double fractionBelow(double limit, Estimate measured, boolean isLowerLimit) {
        double distance = limit - measured.value();
        if (measured.standardUncertainty() <= 0) {
            boolean below = isLowerLimit ? distance > 0 : distance >= 0;
            return below ? 1 : 0;
        }
        return StudentT.below(distance / measured.standardUncertainty(), measured.degreesOfFreedom());
    }
}
