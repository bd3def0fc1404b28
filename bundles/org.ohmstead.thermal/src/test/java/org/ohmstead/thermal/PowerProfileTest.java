// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;

class PowerProfileTest {
    private final HeatModel body = FosterChain.of(1.2, 500).model();
    private final PowerProfile profile =
            new PowerProfile(List.of(new PowerStep(300, 50), new PowerStep(100, 0), new PowerStep(200, 20)));

    // Closed form of one body, step by step.
    @Test
    void followsTheStepsAndStaysAtTheLast() {
        double[] rises = profile.risesKelvin(body, 0, body.cold(), new double[] {0, 150, 300, 350, 400, 500, 1e7});
        double hot = 60 * -Math.expm1(-0.5);
        double cooled = hot * Math.exp(-100 / 600.0);
        assertEquals(0, rises[0], 1e-12);
        assertEquals(60 * -Math.expm1(-0.25), rises[1], 1e-12);
        assertEquals(hot, rises[2], 1e-12);
        assertEquals(hot * Math.exp(-50 / 600.0), rises[3], 1e-12);
        assertEquals(cooled, rises[4], 1e-12);
        assertEquals(24 + (cooled - 24) * Math.exp(-100 / 600.0), rises[5], 1e-12);
        assertEquals(24, rises[6], 1e-12);
    }

    @Test
    void findsThePeakAndTheEnd() {
        HeatPeak peak = profile.peak(body, 0, body.cold());
        assertEquals(300, peak.afterSeconds(), 1e-9);
        assertEquals(60 * -Math.expm1(-0.5), peak.riseKelvin(), 1e-12);
        double cooled = 60 * -Math.expm1(-0.5) * Math.exp(-100 / 600.0);
        assertEquals(24 + (cooled - 24) * Math.exp(-200 / 600.0), profile.after(body, body.cold())[0], 1e-12);
        assertEquals(600, profile.seconds(), 0);
    }

    @Test
    void refusesTimesOutOfOrderAndUnlikeSteps() {
        double[] cold = body.cold();
        double[] unordered = {5, 4};
        assertThrows(IllegalArgumentException.class, () -> profile.risesKelvin(body, 0, cold, unordered));
        List<PowerStep> unlike = List.of(new PowerStep(1, 1), new PowerStep(1, 1, 2));
        assertThrows(IllegalArgumentException.class, () -> new PowerProfile(unlike));
        assertThrows(IllegalArgumentException.class, () -> new PowerStep(-1, 5));
    }
}
