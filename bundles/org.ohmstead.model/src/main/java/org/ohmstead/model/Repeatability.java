// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * How closely the bench finds the same power again.
 *
 * @param ratio standard deviation of a single power as a share of it, 0 to 1
 * @param degreesOfFreedom of that standard deviation, at least 1
 * @param origin how it was found, for example a study and its day; may be empty
 */
public record Repeatability(double ratio, double degreesOfFreedom, String origin) {
    public Repeatability {
        Checks.within(ratio, 0, 1, "ratio");
        Checks.atLeast(degreesOfFreedom, 1, "degreesOfFreedom");
        Checks.present(origin, "origin");
    }

    /** Returns this repeatability with another standard deviation. */
    public Repeatability withRatio(double newRatio) {
        return new Repeatability(newRatio, degreesOfFreedom, origin);
    }

    /** Returns this repeatability with other degrees of freedom. */
    public Repeatability withDegreesOfFreedom(double newDegreesOfFreedom) {
        return new Repeatability(ratio, newDegreesOfFreedom, origin);
    }

    /** Returns this repeatability with other words on its origin. */
    public Repeatability withOrigin(String newOrigin) {
        return new Repeatability(ratio, degreesOfFreedom, newOrigin);
    }
}
