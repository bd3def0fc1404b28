// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * A meter's specification: the half-width of the interval that its maker states around an indication.
 *
 * @param readingRatio share of the indication, 0 to 1: 0.005 is 0.5 % of reading
 * @param fixed fixed part in the unit of the quantity, at least 0
 * @param resolution one step of the display in the unit of the quantity, at least 0; 0 when it plays no part
 * @param coverageFactor 0 when the specification is a bound (taken as a rectangular distribution, GUM 4.3.7), else the k by which
 *     the stated half-width divides to give a standard uncertainty (GUM 4.3.3)
 */
public record Accuracy(double readingRatio, double fixed, double resolution, double coverageFactor) {
    public Accuracy {
        Checks.within(readingRatio, 0, 1, "readingRatio");
        Checks.notNegative(fixed, "fixed");
        Checks.notNegative(resolution, "resolution");
        Checks.notNegative(coverageFactor, "coverageFactor");
    }

    /** Returns the half-width of the stated interval around an indication, in the unit of the quantity. */
    public double halfWidth(double indication) {
        return readingRatio * Math.abs(indication) + fixed;
    }

    /**
     * Returns the standard uncertainty of an indication in the unit of the quantity: half-width over the square root of 3 or over k,
     * and resolution over twice the square root of 3, added in squares (GUM 4.3.7, 4.3.3, F.2.2.1).
     */
    public double standardUncertainty(double indication) {
        double stated = halfWidth(indication) / (coverageFactor > 0 ? coverageFactor : Math.sqrt(3));
        return Math.hypot(stated, resolution / (2 * Math.sqrt(3)));
    }

    /** Returns this specification with another share of the indication. */
    public Accuracy withReadingRatio(double newReadingRatio) {
        return new Accuracy(newReadingRatio, fixed, resolution, coverageFactor);
    }

    /** Returns this specification with another fixed part. */
    public Accuracy withFixed(double newFixed) {
        return new Accuracy(readingRatio, newFixed, resolution, coverageFactor);
    }

    /** Returns this specification with another resolution. */
    public Accuracy withResolution(double newResolution) {
        return new Accuracy(readingRatio, fixed, newResolution, coverageFactor);
    }

    /** Returns this specification with another coverage factor. */
    public Accuracy withCoverageFactor(double newCoverageFactor) {
        return new Accuracy(readingRatio, fixed, resolution, newCoverageFactor);
    }
}
