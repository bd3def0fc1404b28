// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/** What ends the search for power. */
public sealed interface EndPoint {
    /**
     * The output power at a distortion limit.
     *
     * @param ratio the limit, 0 (exclusive) to 1: 0.01 is 1 %
     * @param measure which distortion figure it is about
     */
    record DistortionLimit(double ratio, DistortionMeasure measure) implements EndPoint {
        public DistortionLimit {
            Checks.within(ratio, Double.MIN_NORMAL, 1, "ratio");
            Checks.present(measure, "measure");
        }
    }

    /** The highest output power at which the wave is not yet clipped. */
    record ClippingOnset() implements EndPoint {}

    /**
     * The output power at a drive level.
     *
     * @param driveDb level in dB relative to the source's full output
     */
    record FixedLevel(double driveDb) implements EndPoint {
        public FixedLevel {
            Checks.finite(driveDb, "driveDb");
        }
    }
}
