// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * A fuse of the amplifier.
 *
 * @param ratedAmps rated current in amperes, above 0
 * @param style what it is, for example "blade"; may be empty
 * @param place where it sits, for example "on the amplifier"; may be empty
 */
public record Fuse(double ratedAmps, String style, String place) {
    public Fuse {
        Checks.positive(ratedAmps, "ratedAmps");
        Checks.present(style, "style");
        Checks.present(place, "place");
    }
}
