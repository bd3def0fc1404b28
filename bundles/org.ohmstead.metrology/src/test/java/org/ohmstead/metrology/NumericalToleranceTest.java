// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.ohmstead.metrology.Tolerances.REL_EXACT;
import static org.ohmstead.metrology.Tolerances.assertClose;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NumericalToleranceTest {

    // JCGM 101 7.9.2: u = c times 10 to the l with c of so many digits, delta = 10 to the l over 2.
    @ParameterizedTest
    @CsvSource({
        "0.00035, 2, 0.000005",
        "0.00035, 1, 0.00005",
        "2, 1, 0.5",
        "0.0754, 1, 0.005",
        "0.0754, 2, 0.0005",
        "10.148892, 2, 0.5",
        "502.4938, 2, 5",
        "0.0996, 2, 0.005",
        "0.0994, 2, 0.0005",
        "9.96, 1, 5"
    })
    void isHalfAUnitOfTheLastDigit(double uncertainty, int digits, double tolerance) {
        assertClose(tolerance, NumericalTolerance.of(uncertainty, digits).value(), REL_EXACT);
    }

    @Test
    void rejectsNothingToMeasureWith() {
        assertThrows(IllegalArgumentException.class, () -> NumericalTolerance.of(0, 1));
        assertThrows(IllegalArgumentException.class, () -> NumericalTolerance.of(1, 0));
        assertThrows(IllegalArgumentException.class, () -> NumericalTolerance.of(1, 16));
    }
}
