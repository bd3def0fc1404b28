// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.model.PulseRule;
import org.ohmstead.units.text.Messages;

/**
 * What a drive does to a resistor by the one short overload that its maker states, in two models: that the energy of
 * a pulse decides however short it is (no heat leaves meanwhile), and that the part has one time constant, at which
 * the maker's overload just brings the rise of the power allowed for ever. A drive is allowed only when both models
 * and the mean power allow it.
 *
 * @param rule the maker's overload
 * @param averageRatio mean power over the power allowed for ever
 * @param peakRatio power during a burst over the power allowed for ever
 * @param energySeconds how long the peak may last from cold by the energy; empty for ever
 * @param firstOrderSeconds how long the peak may last from cold by the time constant; empty for ever
 * @param firstOrderPeakRatio rise at the end of a burst over the rise allowed, once the bursts have gone on for long;
 *     for a steady drive {@code averageRatio}
 * @param holds whether the part may take the drive for ever
 */
public record PartHeatingPulse(
        PulseRule rule,
        double averageRatio,
        double peakRatio,
        OptionalDouble energySeconds,
        OptionalDouble firstOrderSeconds,
        double firstOrderPeakRatio,
        boolean holds) {
    private static final Messages TEXTS = Messages.of(PartHeatingPulse.class);

    /** What to print beside every figure of it. */
    public static String note() {
        return TEXTS.text("part.pulse.note");
    }

    private static final double ROUNDING = 1e-9;

    public PartHeatingPulse {
        Checks.present(rule, "rule");
        Checks.notNegative(averageRatio, "averageRatio");
        Checks.notNegative(peakRatio, "peakRatio");
        Checks.present(energySeconds, "energySeconds");
        Checks.present(firstOrderSeconds, "firstOrderSeconds");
        Checks.notNegative(firstOrderPeakRatio, "firstOrderPeakRatio");
    }

    /**
     * Returns what a drive does.
     *
     * @param rule the maker's overload
     * @param allowedWatts what the part may take for ever, above 0
     * @param drive what it gets
     */
    public static PartHeatingPulse of(PulseRule rule, double allowedWatts, LoadSideDrive drive) {
        Checks.present(rule, "rule");
        Checks.positive(allowedWatts, "allowedWatts");
        double average = Checks.present(drive, "drive").averageWatts() / allowedWatts;
        double peak = drive.peakWatts() / allowedWatts;
        OptionalDouble energy = OptionalDouble.empty();
        OptionalDouble firstOrder = OptionalDouble.empty();
        double tau = tauSeconds(rule);
        if (peak > 1) {
            energy = OptionalDouble.of(rule.overloadRatio() * rule.durationSeconds() / peak);
            firstOrder = OptionalDouble.of(-tau * Math.log1p(-1 / peak));
        }
        double rise = average;
        boolean shortEnough = peak <= 1 + ROUNDING;
        if (drive instanceof LoadSideDrive.Bursts bursts) {
            FosterChain chain = new FosterChain(List.of(new FosterStage(1 / allowedWatts, tau)));
            rise = LoadSide.burstEndKelvin(chain, bursts);
            shortEnough = peak <= 1
                    || (bursts.onSeconds() <= Math.min(energy.getAsDouble(), firstOrder.getAsDouble())
                            && rise <= 1 + ROUNDING);
        }
        return new PartHeatingPulse(
                rule, average, peak, energy, firstOrder, rise, shortEnough && average <= 1 + ROUNDING);
    }

    /**
     * Returns the time constant in seconds at which the maker's overload just reaches the rise of the rated power: -t
     * / ln(1 - 1/x).
     */
    public static double tauSeconds(PulseRule rule) {
        return -rule.durationSeconds() / Math.log1p(-1 / rule.overloadRatio());
    }
}
