// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/**
 * The converter between the supply's terminals and the rails of the output stages.
 *
 * @param efficiencyRatio what it gives over what it takes, above 0 and up to 1
 * @param regulated whether the rails stay as they are when the supply volts change; otherwise they follow in proportion
 * @param nominalSupplyVolts supply volts at which the rails were stated, above 0
 */
public record Converter(double efficiencyRatio, boolean regulated, double nominalSupplyVolts) {
    public Converter {
        Checks.positive(efficiencyRatio, "efficiencyRatio");
        Checks.within(efficiencyRatio, 0, 1, "efficiencyRatio");
        Checks.positive(nominalSupplyVolts, "nominalSupplyVolts");
    }

    /** Returns no converter: the output stages hang on the supply. */
    public static Converter none() {
        return new Converter(1, false, 1);
    }

    /**
     * Returns the volts of a rail at some supply volts.
     *
     * @param railVolts at {@code nominalSupplyVolts}, above 0
     * @param supplyVolts at the terminals, above 0
     */
    public double railVolts(double railVolts, double supplyVolts) {
        Checks.positive(railVolts, "railVolts");
        Checks.positive(supplyVolts, "supplyVolts");
        return regulated ? railVolts : railVolts * supplyVolts / nominalSupplyVolts;
    }

    /**
     * Returns where the power of the whole amplifier goes.
     *
     * @param stages all output stages together
     * @param otherWatts what else the amplifier takes from the supply, at least 0: its idle power, as far as the stages do not count it. In
     *     class AB the standing current partly turns into signal current, so that adding it in full errs to the hot side.
     */
    public AmplifierBalance balance(PowerSplit stages, double otherWatts) {
        Checks.notNegative(otherWatts, "otherWatts");
        return new AmplifierBalance(
                stages.outputWatts(), stages.lossWatts(), stages.inputWatts() * (1 / efficiencyRatio - 1), otherWatts);
    }
}
