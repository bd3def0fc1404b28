// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One level of a step as it was recorded: the capture, and what the bench's meters showed.
 *
 * @param captureFile the recorded waveform
 * @param captureSha256 hash of the file's content, 64 hexadecimal digits
 * @param fileName the name under which it was handed in
 * @param voltsPerFullScale volts that full scale stands for: one value, or one for each channel
 * @param driveDb level in dB relative to the source's full output
 * @param supplyVolts direct volts at the amplifier's terminals, above 0
 * @param supplyAmps supply current in amperes, when it was read
 * @param caseCelsius temperature of the amplifier's case, when it was read
 * @param ambientCelsius air temperature, when it was read
 * @param recordedAt when
 */
public record RecordedLevel(
        Path captureFile,
        String captureSha256,
        String fileName,
        List<Double> voltsPerFullScale,
        double driveDb,
        double supplyVolts,
        OptionalDouble supplyAmps,
        OptionalDouble caseCelsius,
        OptionalDouble ambientCelsius,
        Instant recordedAt) {
    public RecordedLevel {
        voltsPerFullScale = List.copyOf(voltsPerFullScale);
        if (voltsPerFullScale.isEmpty()) {
            throw new IllegalArgumentException(
                    "voltsPerFullScale is empty; it needs one value, or one for each channel");
        }
        if (!Double.isFinite(driveDb)) {
            throw new IllegalArgumentException("driveDb is " + driveDb + "; it must be a finite number");
        }
        if (!Double.isFinite(supplyVolts) || supplyVolts <= 0) {
            throw new IllegalArgumentException(
                    "supplyVolts is " + supplyVolts + "; it must be a finite number above 0");
        }
    }
}
