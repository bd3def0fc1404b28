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

    /** Returns this fuse with another rated current in amperes. */
    public Fuse withRatedAmps(double newRatedAmps) {
        return new Fuse(newRatedAmps, style, place);
    }

    /** Returns this fuse with another style. */
    public Fuse withStyle(String newStyle) {
        return new Fuse(ratedAmps, newStyle, place);
    }

    /** Returns this fuse with another place. */
    public Fuse withPlace(String newPlace) {
        return new Fuse(ratedAmps, style, newPlace);
    }
}
