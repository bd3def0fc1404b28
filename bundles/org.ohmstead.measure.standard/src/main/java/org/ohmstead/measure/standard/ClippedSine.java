// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

/** The distortion of a sine whose tops are cut off symmetrically, in closed form, and its inverse. */
final class ClippedSine {
    private static final double LEAST_CLIP_RATIO = 0.02;
    private static final int BISECTIONS = 60;

    private ClippedSine() {}

    /**
     * Returns harmonics over fundamental when the limit is this share of the drive's peak: with theta = asin k, the mean square is
     * (theta - sin(2 theta) / 2) / pi + k^2 (1 - 2 theta / pi), and the fundamental (2 / pi) (theta + k sqrt(1 - k^2)).
     */
    static double thdFRatio(double clipRatio) {
        double theta = Math.asin(clipRatio);
        double fundamental = 2 / Math.PI * (theta + clipRatio * Math.sqrt(1 - clipRatio * clipRatio));
        double meanSquare =
                (theta - Math.sin(2 * theta) / 2) / Math.PI + clipRatio * clipRatio * (1 - 2 * theta / Math.PI);
        return Math.sqrt(Math.max(0, 2 * meanSquare / (fundamental * fundamental) - 1));
    }

    /** Returns how far above the onset of clipping a distortion is met, in dB; beyond 40 % that of 40 %. */
    static double overdriveDb(double thdFRatio) {
        double low = LEAST_CLIP_RATIO;
        double high = 1;
        for (int i = 0; i < BISECTIONS; i++) {
            double middle = (low + high) / 2;
            if (thdFRatio(middle) > Math.min(thdFRatio, 0.4)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return -20 * Math.log10(high);
    }
}
