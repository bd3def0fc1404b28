// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

/**
 * A part of the uncertainty that does not average out over a subject's readings, since they have its cause in common. Two subjects with
 * the same cause have the very same error, relatively.
 *
 * @param source where it comes from, such as "output volts (meter)"
 * @param cause the instrument or load behind it, by which the same one is known again
 * @param relative its standard uncertainty over the power, at least 0
 */
public record SharedPart(String source, String cause, double relative) {
    /** Checks the range given above. */
    public SharedPart {
        if (!(relative >= 0) || !Double.isFinite(relative)) {
            throw new IllegalArgumentException(
                    "relative is " + relative + "; it must be a finite number of at least 0");
        }
    }
}
