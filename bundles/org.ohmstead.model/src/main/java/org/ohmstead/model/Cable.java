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
    public Cable {
        Checks.positive(crossSectionSquareMillimetres, "crossSectionSquareMillimetres");
        Checks.positive(loopMetres, "loopMetres");
        measuredLoopOhms.ifPresent(value -> Checks.notNegative(value, "measuredLoopOhms"));
    }

    /** Returns the loop resistance in ohms: as measured, else of copper at 20 degrees Celsius (IEC 60028). */
    public double loopOhms() {
        return measuredLoopOhms.orElse(
                CopperWire.ohms(crossSectionSquareMillimetres, loopMetres, CopperWire.REFERENCE_CELSIUS));
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
