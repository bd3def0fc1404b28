// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;

/**
 * Reads the inputs that are kept, each a test of its own: those to begin with, and those that something was found by. With {@code
 * JAZZER_FUZZ=1} in the environment and one method named, the same looks for further ones, ten minutes long.
 */
class KeptInputsTest {
    private static final String TEN_MINUTES = "10m";

    @FuzzTest(maxDuration = TEN_MINUTES)
    void quantities(byte[] input) {
        Target.QUANTITIES.read(input);
    }

    @FuzzTest(maxDuration = TEN_MINUTES)
    void networks(byte[] input) {
        Target.NETWORKS.read(input);
    }

    @FuzzTest(maxDuration = TEN_MINUTES)
    void wav(byte[] input) {
        Target.WAV.read(input);
    }

    @FuzzTest(maxDuration = TEN_MINUTES)
    void csv(byte[] input) {
        Target.CSV.read(input);
    }

    @FuzzTest(maxDuration = TEN_MINUTES)
    void project(byte[] input) {
        Target.PROJECT.read(input);
    }

    @FuzzTest(maxDuration = TEN_MINUTES)
    void records(byte[] input) {
        Target.RECORDS.read(input);
    }

    @FuzzTest(maxDuration = TEN_MINUTES)
    void scpi(byte[] input) {
        Target.SCPI.read(input);
    }

    @FuzzTest(maxDuration = TEN_MINUTES)
    void zip(byte[] input) {
        Target.ZIP.read(input);
    }

    @FuzzTest(maxDuration = TEN_MINUTES)
    void xlsx(byte[] input) {
        Target.XLSX.read(input);
    }

    @FuzzTest(maxDuration = TEN_MINUTES)
    void table(byte[] input) {
        Target.TABLE.read(input);
    }
}
