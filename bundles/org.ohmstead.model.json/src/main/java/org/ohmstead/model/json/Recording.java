// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * One recorded waveform file and what was read from the bench while it was taken.
 *
 * @param stepId which step of the plan it belongs to, not blank
 * @param fileName plain name of the file, beside the list; no folder
 * @param driveDb level in dB relative to the source's full output
 * @param voltsPerFullScale volts that full scale stands for, each above 0, one value for each channel; at least one
 * @param supplyVolts direct volts at the amplifier's terminals, above 0
 * @param supplyAmps supply current in amperes, when it was read
 * @param caseCelsius temperature of the amplifier's case or sink, when it was read
 * @param ambientCelsius air temperature, when it was read
 * @param recordedAt when it was recorded
 */
public record Recording(
        String stepId,
        String fileName,
        double driveDb,
        List<Double> voltsPerFullScale,
        double supplyVolts,
        OptionalDouble supplyAmps,
        OptionalDouble caseCelsius,
        OptionalDouble ambientCelsius,
        Instant recordedAt) {
    public Recording {
        if (stepId.isBlank()) {
            throw new IllegalArgumentException("stepId is blank; it needs a text");
        }
        requirePlainName(fileName);
        requireFinite(driveDb, "driveDb");
        voltsPerFullScale = List.copyOf(voltsPerFullScale);
        if (voltsPerFullScale.isEmpty()) {
            throw new IllegalArgumentException("voltsPerFullScale is empty; it needs one number for each channel");
        }
        voltsPerFullScale.forEach(value -> requirePositive(value, "voltsPerFullScale"));
        requirePositive(supplyVolts, "supplyVolts");
        supplyAmps.ifPresent(value -> requireFinite(value, "supplyAmps"));
        caseCelsius.ifPresent(value -> requireFinite(value, "caseCelsius"));
        ambientCelsius.ifPresent(value -> requireFinite(value, "ambientCelsius"));
        Objects.requireNonNull(recordedAt, "recordedAt");
    }

    private static void requirePlainName(String fileName) {
        boolean plain = !fileName.isBlank()
                && fileName.chars().noneMatch(c -> c == '/' || c == '\\' || c == ':' || c < ' ')
                && !fileName.equals(".")
                && !fileName.contains("..");
        if (!plain) {
            throw new IllegalArgumentException("fileName is \"" + fileName
                    + "\"; it must be the plain name of a file beside the list, without a folder, a colon or \"..\"");
        }
    }

    private static void requireFinite(double value, String name) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be a finite number");
        }
    }

    private static void requirePositive(double value, String name) {
        if (!Double.isFinite(value) || value <= 0) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be a finite number above 0");
        }
    }
}
