// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.OptionalDouble;

/**
 * The cable from the supply to the amplifier's terminals.
 *
 * @param crossSectionSquareMillimetres copper cross-section of one conductor in square millimetres, above 0
 * @param loopMetres there and back, in metres, above 0
 * @param measuredLoopOhms resistance there and back in ohms as measured, when it was; it overrides the copper estimate
 */
public record Cable(double crossSectionSquareMillimetres, double loopMetres, OptionalDouble measuredLoopOhms) {
    /**
     * Resistivity of annealed copper at 20 degrees Celsius, in ohm square millimetres per metre: 1/58, the International Annealed
     * Copper Standard of IEC 60028.
     */
    public static final double COPPER_OHM_SQUARE_MILLIMETRES_PER_METRE = 1.0 / 58.0;

    public Cable {
        Checks.positive(crossSectionSquareMillimetres, "crossSectionSquareMillimetres");
        Checks.positive(loopMetres, "loopMetres");
        measuredLoopOhms.ifPresent(value -> Checks.notNegative(value, "measuredLoopOhms"));
    }

    /** Returns the loop resistance in ohms: as measured, else of copper at 20 degrees Celsius (IEC 60028). */
    public double loopOhms() {
        return measuredLoopOhms.orElse(
                COPPER_OHM_SQUARE_MILLIMETRES_PER_METRE * loopMetres / crossSectionSquareMillimetres);
    }

    /** Returns this cable with another cross section in square millimetres. */
    public Cable withCrossSectionSquareMillimetres(double newCrossSectionSquareMillimetres) {
        return new Cable(newCrossSectionSquareMillimetres, loopMetres, measuredLoopOhms);
    }

    /** Returns this cable with another loop length in metres. */
    public Cable withLoopMetres(double newLoopMetres) {
        return new Cable(crossSectionSquareMillimetres, newLoopMetres, measuredLoopOhms);
    }

    /** Returns this cable with another measured loop resistance in ohms, or none. */
    public Cable withMeasuredLoopOhms(OptionalDouble newMeasuredLoopOhms) {
        return new Cable(crossSectionSquareMillimetres, loopMetres, newMeasuredLoopOhms);
    }
}
