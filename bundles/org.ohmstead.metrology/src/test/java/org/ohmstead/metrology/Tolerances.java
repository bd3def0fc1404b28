// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import static org.junit.jupiter.api.Assertions.assertEquals;

/** Relative tolerances of the tests. */
final class Tolerances {

    static final double REL_1PPM = 1e-6;
    static final double REL_EXACT = 1e-12;

    private Tolerances() {}

    static void assertClose(double expected, double actual, double relative) {
        assertEquals(expected, actual, Math.abs(expected) * relative);
    }
}
