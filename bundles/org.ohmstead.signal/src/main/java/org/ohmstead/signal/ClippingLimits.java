// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where the tops of a clipped tone are cut off. The wave is taken as a sine of amplitude A about a centre, cut at the
 * angles a from its peaks whose cosines are the limits over A; then the fundamental is A (1 - T1(a+) - T1(a-)) and the
 * mean is the centre minus A (T0(a+) - T0(a-)), with T0(a) = (sin a - a cos a) / pi and T1(a) = (a - sin a cos a) / pi:
 * the first terms of the Fourier series of the tips in closed form.
 *
 * @param upperVolts instantaneous volts of the upper limit; empty if that side is not cut
 * @param lowerVolts instantaneous volts of the lower limit; empty if that side is not cut
 * @param uncutVoltsPeak amplitude that the sine would have without the cut, above 0
 * @param upperHalfAngleRadians how far from its peak the sine meets the upper limit; 0 if that side is not cut
 * @param lowerHalfAngleRadians how far from its trough the sine meets the lower limit; 0 if that side is not cut
 */
public record ClippingLimits(
        OptionalDouble upperVolts,
        OptionalDouble lowerVolts,
        double uncutVoltsPeak,
        double upperHalfAngleRadians,
        double lowerHalfAngleRadians) {
    /** Checks that every number is finite. */
    public ClippingLimits {
        upperVolts.ifPresent(value -> Checks.finite("upperVolts", value));
        lowerVolts.ifPresent(value -> Checks.finite("lowerVolts", value));
        Checks.zeroOrAbove("uncutVoltsPeak", uncutVoltsPeak);
        Checks.zeroOrAbove("upperHalfAngleRadians", upperHalfAngleRadians);
        Checks.zeroOrAbove("lowerHalfAngleRadians", lowerHalfAngleRadians);
    }

    /** Returns the limits of an analysed tone, or empty if it is not clipped. */
    public static Optional<ClippingLimits> of(ChannelAnalysis analysis) {
        Clipping clipping = analysis.clipping();
        if (!clipping.clipped()) {
            return Optional.empty();
        }
        double upperAngle = halfAngle(clipping.positiveDriveDb());
        double lowerAngle = halfAngle(clipping.negativeDriveDb());
        double left = 1 - firstTerm(upperAngle) - firstTerm(lowerAngle);
        double uncut = Math.sqrt(2) * analysis.fundamentalVoltsRms() / left;
        double centre = analysis.dcVolts() + uncut * (meanTerm(upperAngle) - meanTerm(lowerAngle));
        return Optional.of(new ClippingLimits(
                upperAngle > 0 ? OptionalDouble.of(centre + uncut * Math.cos(upperAngle)) : OptionalDouble.empty(),
                lowerAngle > 0 ? OptionalDouble.of(centre - uncut * Math.cos(lowerAngle)) : OptionalDouble.empty(),
                uncut,
                upperAngle,
                lowerAngle));
    }

    private static double halfAngle(double driveDb) {
        return Math.acos(Math.pow(10, -driveDb / 20));
    }

    private static double meanTerm(double angle) {
        return (Math.sin(angle) - angle * Math.cos(angle)) / Math.PI;
    }

    private static double firstTerm(double angle) {
        return (angle - Math.sin(angle) * Math.cos(angle)) / Math.PI;
    }
}
