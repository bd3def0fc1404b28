// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * Whether the tops of a tone are cut off, and how deeply.
 *
 * @param clipped true if the wave shape is that of a sine with cut-off tops
 * @param driveOverOnsetDb how far the drive lies above the level at which the tops begin to be cut:
 *     20 log10(extrapolated peak / plateau), of the side that is cut more deeply, at most 40 dB; 0 if not
 *     clipped
 * @param flatShare share of the time spent on the plateaus, 0 to 1: for a symmetric hard limit k it is
 *     1 - 2 asin(k) / pi; 0 if not clipped
 * @param positiveDriveDb drive over onset of the positive side in dB; 0 if that side is not cut
 * @param negativeDriveDb drive over onset of the negative side in dB; 0 if that side is not cut
 */
public record Clipping(
        boolean clipped, double driveOverOnsetDb, double flatShare, double positiveDriveDb, double negativeDriveDb) {
    /** No clipping found. */
    public static final Clipping NONE = new Clipping(false, 0, 0, 0, 0);

    /** Checks the ranges. */
    public Clipping {
        Checks.zeroOrAbove("driveOverOnsetDb", driveOverOnsetDb);
        Checks.zeroOrAbove("flatShare", flatShare);
        Checks.zeroOrAbove("positiveDriveDb", positiveDriveDb);
        Checks.zeroOrAbove("negativeDriveDb", negativeDriveDb);
        if (flatShare > 1) {
            throw new IllegalArgumentException("flatShare must be 0 to 1, but is " + flatShare);
        }
    }
}
