// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.util.OptionalDouble;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.StudentT;

/**
 * A value with its standard uncertainty, both in the same unit.
 *
 * @param value the best estimate, finite
 * @param standardUncertainty the standard uncertainty u, finite and at least 0
 * @param degreesOfFreedom how well u itself is known, greater than 0; {@link Double#POSITIVE_INFINITY} is allowed and
 *     means that u is taken as exactly known (usual for type B evaluations, GUM G.4.3), so that coverage factors come
 *     from the normal distribution
 */
public record Estimate(double value, double standardUncertainty, double degreesOfFreedom) {

    /** Checks the ranges given above. */
    public Estimate {
        Checks.finite("value", value);
        Checks.notNegative("standardUncertainty", standardUncertainty);
        Checks.degreesOfFreedom(degreesOfFreedom);
    }

    /** Returns an estimate whose standard uncertainty is taken as exactly known (infinite degrees of freedom). */
    public static Estimate of(double value, double standardUncertainty) {
        return new Estimate(value, standardUncertainty, Double.POSITIVE_INFINITY);
    }

    /**
     * Returns the type A estimate of repeated readings: their mean and the experimental standard deviation of the
     * mean, s/sqrt(n), with n-1 degrees of freedom (GUM 4.2).
     *
     * @param readings at least two finite readings of the same thing
     */
    public static Estimate fromReadings(double... readings) {
        if (readings.length < 2) {
            throw new IllegalArgumentException(
                    "readings has " + readings.length + " entries but at least two are needed to see their scatter.");
        }
        double mean = mean(readings);
        double squares = 0;
        for (double reading : readings) {
            squares += (reading - mean) * (reading - mean);
        }
        int count = readings.length;
        return new Estimate(mean, Math.sqrt(squares / (count - 1) / count), count - 1.0);
    }

    /**
     * Returns a type B estimate: any value within the half width is equally likely, u = halfWidth/sqrt(3) (GUM 4.3.7).
     */
    public static Estimate rectangular(double value, double halfWidth) {
        return of(value, Checks.notNegative("halfWidth", halfWidth) / Math.sqrt(3));
    }

    /** Returns a type B estimate: values near the middle are more likely, u = halfWidth/sqrt(6) (GUM 4.3.9). */
    public static Estimate triangular(double value, double halfWidth) {
        return of(value, Checks.notNegative("halfWidth", halfWidth) / Math.sqrt(6));
    }

    /**
     * Returns a type B estimate for a quantity that swings sinusoidally between the limits, u = halfWidth/sqrt(2)
     * (JCGM 101 6.4.6).
     */
    public static Estimate arcsine(double value, double halfWidth) {
        return of(value, Checks.notNegative("halfWidth", halfWidth) / Math.sqrt(2));
    }

    /**
     * Returns a type B estimate from a calibration certificate, u = expanded/k (GUM 4.3.3).
     *
     * @param expanded the certificate's expanded uncertainty U, at least 0
     * @param k the certificate's coverage factor, greater than 0
     */
    public static Estimate normal(double value, double expanded, double k) {
        return of(value, Checks.notNegative("expanded", expanded) / Checks.positive("k", k));
    }

    /** Returns a type B estimate for an indication that was rounded to a step, u = step/(2 sqrt(3)) (GUM F.2.2.1). */
    public static Estimate resolution(double value, double step) {
        return rectangular(value, Checks.notNegative("step", step) / 2);
    }

    /**
     * Returns the coverage factor k for a two-sided interval: Student's t at (1 + confidence)/2 (GUM G.3). Degrees of
     * freedom need not be whole numbers; they are used as they are, not cut off to the next lower whole number.
     *
     * @param confidence the level of confidence, strictly between 0 and 1, e.g. 0.95
     */
    public double coverageFactor(double confidence) {
        Checks.probability("confidence", confidence);
        return StudentT.quantile(0.5 + confidence / 2, degreesOfFreedom);
    }

    /**
     * Returns the expanded uncertainty U = k u at a level of confidence strictly between 0 and 1, in the unit of the
     * value.
     */
    public double expandedUncertainty(double confidence) {
        return coverageFactor(confidence) * standardUncertainty;
    }

    /** Returns value +- U as an interval at a level of confidence strictly between 0 and 1. */
    public CoverageInterval interval(double confidence) {
        double expanded = expandedUncertainty(confidence);
        return new CoverageInterval(value - expanded, value + expanded, confidence);
    }

    /** Returns u/|value| as a ratio, or nothing if the value is zero. */
    public OptionalDouble relative() {
        double ratio = standardUncertainty / Math.abs(value);
        return Double.isFinite(ratio) ? OptionalDouble.of(ratio) : OptionalDouble.empty();
    }

    private static double mean(double[] readings) {
        double sum = 0;
        for (double reading : readings) {
            sum += Checks.finite("reading", reading);
        }
        double rough = sum / readings.length;
        // Second pass: removes the rounding error of the long sum.
        double correction = 0;
        for (double reading : readings) {
            correction += reading - rough;
        }
        return rough + correction / readings.length;
    }
}
