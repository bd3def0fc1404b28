// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/**
 * A place of a resistor with the way from its power to its temperature, ready for a {@link HeatModel}.
 *
 * @param place where
 * @param point its name and limit
 * @param chain from the part's power to the rise above the air
 */
public record PartHeatingPoint(Place place, HeatPoint point, FosterChain chain) {
    /** Where a resistor's temperature is watched. */
    public enum Place {
        /** Its case, on a sink of known thermal resistance. */
        CASE,
        /** Its wire, by a thermal resistance that is known. */
        ELEMENT,
        /** Its hottest spot as its derating line implies; at its limit the part takes just what the line allows. */
        RATING
    }

    public PartHeatingPoint {
        Checks.present(place, "place");
        Checks.present(point, "point");
        Checks.present(chain, "chain");
    }
}
