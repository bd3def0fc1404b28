// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

/** A capture as a table of times and volts. */
public final class CsvWaveforms {
    private CsvWaveforms() {}

    /** Reads any bytes as such a table. */
    public static void fuzzerTestOneInput(byte[] input) {
        Bounds.hold(() -> read(input));
    }

    private static void read(byte[] input) {
        Captures.read(Desk.file("capture.csv", input));
    }
}
