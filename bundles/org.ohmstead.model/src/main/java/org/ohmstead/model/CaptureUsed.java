// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.List;

/**
 * A recorded waveform that a reading depended on.
 *
 * @param sha256 hash of the file's content, 64 hexadecimal digits
 * @param fileName name under which it was handed in
 * @param voltsPerFullScale volts that full scale stands for, one value for each channel
 */
public record CaptureUsed(String sha256, String fileName, List<Double> voltsPerFullScale) {
    public CaptureUsed {
        if (!sha256.matches("[0-9a-f]{64}")) {
            throw new IllegalArgumentException("sha256 is '" + sha256 + "'; it must be 64 hexadecimal digits");
        }
        Checks.named(fileName, "fileName");
        voltsPerFullScale = List.copyOf(voltsPerFullScale);
        voltsPerFullScale.forEach(value -> Checks.positive(value, "voltsPerFullScale"));
    }
}
