// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

/** A capture as a WAV file. */
public final class WavFiles {
    private WavFiles() {}

    /** Reads any bytes as a WAV file. */
    public static void fuzzerTestOneInput(byte[] input) {
        Bounds.hold(() -> read(input));
    }

    private static void read(byte[] input) {
        Captures.read(Desk.file("capture.wav", input));
    }
}
