// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * What a project holds for the forecast of heat, current and time.
 *
 * @param amplifier how the amplifier turns power into heat and gets rid of it
 * @param supply what else bounds the supply side
 * @param pacing how long the handling takes, and the room below each limit
 */
public record HeatData(AmplifierHeat amplifier, SupplyLimits supply, Pacing pacing) {
    /** Nothing known, usual pacing. */
    public static final HeatData NONE = new HeatData(AmplifierHeat.NONE, SupplyLimits.NONE, Pacing.USUAL);

    public HeatData {
        Checks.present(amplifier, "amplifier");
        Checks.present(supply, "supply");
        Checks.present(pacing, "pacing");
    }

    /** Returns this data with other facts about the amplifier. */
    public HeatData withAmplifier(AmplifierHeat newAmplifier) {
        return new HeatData(newAmplifier, supply, pacing);
    }

    /** Returns this data with other bounds of the supply side. */
    public HeatData withSupply(SupplyLimits newSupply) {
        return new HeatData(amplifier, newSupply, pacing);
    }

    /** Returns this data with another pacing. */
    public HeatData withPacing(Pacing newPacing) {
        return new HeatData(amplifier, supply, newPacing);
    }
}
