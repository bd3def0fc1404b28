// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.OptionalDouble;

/**
 * One level of a step's level sweep, in one channel.
 *
 * @param driveDb level in dB relative to the source's full output
 * @param outputVoltsRms alternating output volts, RMS, at least 0
 * @param powerWatts output power in watts, at least 0
 * @param thdFRatio harmonics over the fundamental, at least 0
 * @param thdPlusNoiseRRatio all but the fundamental over the alternating signal, at least 0
 * @param clipped whether the wave is clipped
 * @param supplyVolts direct volts at the amplifier's terminals during the capture, above 0
 * @param supplyAmps supply current in amperes during the capture, when it was read
 * @param captureSha256 hash of the capture it comes from, 64 hexadecimal digits
 */
public record SweepPoint(
        double driveDb,
        double outputVoltsRms,
        double powerWatts,
        double thdFRatio,
        double thdPlusNoiseRRatio,
        boolean clipped,
        double supplyVolts,
        OptionalDouble supplyAmps,
        String captureSha256) {
    public SweepPoint {
        Checks.finite(driveDb, "driveDb");
        Checks.notNegative(outputVoltsRms, "outputVoltsRms");
        Checks.notNegative(powerWatts, "powerWatts");
        Checks.notNegative(thdFRatio, "thdFRatio");
        Checks.notNegative(thdPlusNoiseRRatio, "thdPlusNoiseRRatio");
        Checks.positive(supplyVolts, "supplyVolts");
        supplyAmps.ifPresent(value -> Checks.finite(value, "supplyAmps"));
        Checks.named(captureSha256, "captureSha256");
    }
}
