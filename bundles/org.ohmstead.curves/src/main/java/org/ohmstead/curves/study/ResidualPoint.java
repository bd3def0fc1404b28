// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

/**
 * A reading beside the curve fitted to it and the others.
 *
 * @param point the reading
 * @param fittedWatts the power on the curve
 * @param residualWatts reading minus curve
 * @param standardised residual over the reading's standard uncertainty
 * @param leverage how much the reading pulls the curve to itself, 0 to 1; the sum over all readings is the number of
 *     values found
 * @param studentised residual over its own standard deviation, which is smaller where the leverage is larger; 0 where
 *     the curve has to pass through the reading
 * @param weight what the reading counted, 0 to 1; 1 in a fit that is not robust
 */
public record ResidualPoint(
        StudyPoint point,
        double fittedWatts,
        double residualWatts,
        double standardised,
        double leverage,
        double studentised,
        double weight) {
    /** From so many standard deviations on a reading is named (a choice of this program: 1 in 370 by chance). */
    public static final double OUTLIER_FROM = 3;

    /** Returns whether the reading lies so far off that chance hardly explains it. */
    public boolean outlier() {
        return Math.abs(studentised) > OUTLIER_FROM;
    }
}
