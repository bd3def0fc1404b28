// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Range;
import org.ohmstead.thermal.FuseAnswer;
import org.ohmstead.thermal.SupplyCurrent;

/**
 * What a step will draw and heat.
 *
 * @param jobId the step's id, or {@link PlanForecast#WARM_UP}
 * @param power output power to expect
 * @param outputWatts mean output of all channels together in watts, at least 0
 * @param heatWatts mean heat in the amplifier in watts
 * @param loudHeatWatts heat during the burst; as {@code heatWatts} without bursts
 * @param supplyWatts mean power at the amplifier's terminals in watts, at the most, at least 0
 * @param current drawn from the supply at the most; empty when the power is not known
 * @param loudAmps average current during the burst at the most, in amperes; that of {@code current} without bursts
 * @param setVolts what the supply has to be set to so that the step's volts arrive, with the current at the most; empty
 *     when not known
 * @param cableDropVolts lost in the cable then
 * @param fuse what the current does to the amplifier's fuses; empty when there are none, or none that is known
 * @param remarks what was assumed, in whole sentences
 */
public record StepForecast(
        String jobId,
        ExpectedPower power,
        double outputWatts,
        Range heatWatts,
        Range loudHeatWatts,
        double supplyWatts,
        Optional<SupplyCurrent> current,
        double loudAmps,
        OptionalDouble setVolts,
        double cableDropVolts,
        Optional<FuseAnswer> fuse,
        List<String> remarks) {
    public StepForecast {
        Require.named(jobId, "jobId");
        Require.present(power, "power");
        Require.notNegative(outputWatts, "outputWatts");
        Require.present(heatWatts, "heatWatts");
        Require.present(loudHeatWatts, "loudHeatWatts");
        Require.notNegative(supplyWatts, "supplyWatts");
        Require.present(current, "current");
        Require.notNegative(loudAmps, "loudAmps");
        Require.present(setVolts, "setVolts");
        Require.notNegative(cableDropVolts, "cableDropVolts");
        Require.present(fuse, "fuse");
        remarks = List.copyOf(remarks);
    }
}
