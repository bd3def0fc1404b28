// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.Optional;
import org.ohmstead.units.text.Messages;

/**
 * A supply with a cable that warms up under the current it carries, whereby its resistance rises.
 *
 * @param source the supply or battery
 * @param lead the cable
 */
public record SupplyFeed(SupplySource source, CableLead lead) {
    private static final Messages TEXTS = Messages.of(SupplyFeed.class);
    private static final int MOST_ROUNDS = 1000;
    private static final double SAME_KELVIN = 1e-9;

    public SupplyFeed {
        Checks.present(source, "source");
        Checks.present(lead, "lead");
    }

    /**
     * What arrives in the end.
     *
     * @param answer at the terminals
     * @param cable how warm the cable is; empty unless the supply delivers
     */
    public record Warm(SupplyAnswer answer, Optional<CableHeating.Settled> cable) {
        public Warm {
            Checks.present(answer, "answer");
            Checks.present(cable, "cable");
        }
    }

    /** Returns what arrives while the cable's wire has a temperature in degrees Celsius. */
    public SupplyAnswer at(SupplyDemand demand, double conductorCelsius) {
        return new SupplyNode(source, lead.loopOhms(conductorCelsius)).answer(demand);
    }

    /**
     * Returns what arrives once the cable gets no warmer.
     *
     * @param demand how the amplifier draws; average current
     * @param rmsRatio RMS over average of its current, at least 1 ({@link SupplyWaveform#rmsRatio})
     * @param ambientCelsius temperature of the air, -60 to 120
     */
    public Warm settled(SupplyDemand demand, double rmsRatio, double ambientCelsius) {
        Checks.within(rmsRatio, 1, 100, "rmsRatio");
        double celsius = ambientCelsius;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            SupplyAnswer answer = at(demand, celsius);
            if (!(answer instanceof SupplyAnswer.Delivered delivered)) {
                return new Warm(answer, Optional.empty());
            }
            CableHeating heating = lead.settled(rmsRatio * delivered.amps(), ambientCelsius);
            if (!(heating instanceof CableHeating.Settled settled)) {
                return new Warm((SupplyNoSolution) heating, Optional.empty());
            }
            if (Math.abs(settled.conductorCelsius() - celsius) <= SAME_KELVIN) {
                return new Warm(answer, Optional.of(settled));
            }
            celsius = settled.conductorCelsius();
        }
        return new Warm(
                new SupplyNoSolution(TEXTS.text("supply.grows"), TEXTS.text("supply.grows.remedy")), Optional.empty());
    }
}
