// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.OptionalDouble;

/**
 * What else bounds the supply side of a bench. All of it may be missing.
 *
 * @param battery whether the supply is a battery
 * @param sourceOhms internal resistance of the supply or battery in ohms, at least 0
 * @param continuousAmps what the supply gives for as long as one likes, in amperes, above 0; when missing, its current limit
 * @param cableLimitCelsius the hottest that the cable's insulation may get, in degrees Celsius
 * @param cableOuterMetres outer diameter of one lead of the cable with its insulation, in metres, above 0
 */
public record SupplyLimits(
        boolean battery,
        OptionalDouble sourceOhms,
        OptionalDouble continuousAmps,
        OptionalDouble cableLimitCelsius,
        OptionalDouble cableOuterMetres) {
    /** Nothing known. */
    public static final SupplyLimits NONE = new SupplyLimits(
            false, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

    public SupplyLimits {
        Checks.present(sourceOhms, "sourceOhms").ifPresent(value -> Checks.notNegative(value, "sourceOhms"));
        Checks.present(continuousAmps, "continuousAmps").ifPresent(value -> Checks.positive(value, "continuousAmps"));
        Checks.present(cableLimitCelsius, "cableLimitCelsius")
                .ifPresent(value -> Checks.within(value, -60, 400, "cableLimitCelsius"));
        Checks.present(cableOuterMetres, "cableOuterMetres")
                .ifPresent(value -> Checks.positive(value, "cableOuterMetres"));
    }

    /** Returns these bounds with another answer: whether the supply is a battery. */
    public SupplyLimits withBattery(boolean newBattery) {
        return new SupplyLimits(newBattery, sourceOhms, continuousAmps, cableLimitCelsius, cableOuterMetres);
    }

    /** Returns these bounds with another internal resistance in ohms, or none. */
    public SupplyLimits withSourceOhms(OptionalDouble newSourceOhms) {
        return new SupplyLimits(battery, newSourceOhms, continuousAmps, cableLimitCelsius, cableOuterMetres);
    }

    /** Returns these bounds with another continuous current in amperes, or none. */
    public SupplyLimits withContinuousAmps(OptionalDouble newContinuousAmps) {
        return new SupplyLimits(battery, sourceOhms, newContinuousAmps, cableLimitCelsius, cableOuterMetres);
    }

    /** Returns these bounds with another limit of the insulation in degrees Celsius, or none. */
    public SupplyLimits withCableLimitCelsius(OptionalDouble newCableLimitCelsius) {
        return new SupplyLimits(battery, sourceOhms, continuousAmps, newCableLimitCelsius, cableOuterMetres);
    }

    /** Returns these bounds with another outer diameter of a lead in metres, or none. */
    public SupplyLimits withCableOuterMetres(OptionalDouble newCableOuterMetres) {
        return new SupplyLimits(battery, sourceOhms, continuousAmps, cableLimitCelsius, newCableOuterMetres);
    }
}
