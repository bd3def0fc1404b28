// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.OptionalDouble;

/**
 * What a step of a test asks of an amplifier.
 *
 * @param drive what each loaded output puts out
 * @param load what hangs on each
 * @param outputs how many are loaded alike, at least 1; a bridged pair is one
 * @param bridged whether each output is a pair of channels with the load between them
 * @param supplyVolts at the amplifier's terminals, above 0
 * @param mostOutputVoltsRms the most unclipped sine into this load, if it is known; stands in for rails that are not
 * @param measuredInputWatts what the amplifier was seen to take from the supply in this step, if it was
 */
public record StepDemand(
        Drive drive,
        StageLoad load,
        int outputs,
        boolean bridged,
        double supplyVolts,
        OptionalDouble mostOutputVoltsRms,
        OptionalDouble measuredInputWatts) {
    public StepDemand {
        Checks.present(drive, "drive");
        Checks.present(load, "load");
        Checks.within(outputs, 1, 1000, "outputs");
        Checks.positive(supplyVolts, "supplyVolts");
        Checks.present(mostOutputVoltsRms, "mostOutputVoltsRms")
                .ifPresent(value -> Checks.positive(value, "mostOutputVoltsRms"));
        Checks.present(measuredInputWatts, "measuredInputWatts")
                .ifPresent(value -> Checks.notNegative(value, "measuredInputWatts"));
    }

    /** Returns the output power of all outputs on average, in watts. */
    public double outputWatts() {
        double joules = 0;
        double seconds = 0;
        for (Drive.Stretch stretch : drive.stretches()) {
            joules += stretch.seconds() * load.watts(stretch.drive().outputVoltsRms());
            seconds += stretch.seconds();
        }
        return outputs * joules / seconds;
    }

    /** Returns the highest RMS volts of the drive. */
    double highestVoltsRms() {
        return drive.stretches().stream()
                .mapToDouble(stretch -> stretch.drive().outputVoltsRms())
                .max()
                .orElse(0);
    }

    StepDemand with(Drive other) {
        return new StepDemand(other, load, outputs, bridged, supplyVolts, mostOutputVoltsRms, OptionalDouble.empty());
    }
}
