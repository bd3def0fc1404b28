// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.sample.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;

class CableDropTest {
    @Test
    void dropAndHeatFollowOhmAndJoule() {
        CableDrop drop = new CableDrop(60, 0.010);
        // Closed form: 60 A times 10 milliohms, and 60 A squared times 10 milliohms.
        assertEquals(0.6, drop.volts(), 1e-12);
        assertEquals(36, drop.watts(), 1e-9);
    }

    @Test
    void onlyADropAboveWhatIsAllowedIsAProblemAtTheCable() {
        CableDrop drop = new CableDrop(60, 0.010);
        assertTrue(CableDropProblems.problems(drop, 0.6).isEmpty());
        List<Problem> problems = CableDropProblems.problems(drop, 0.5);
        assertEquals(1, problems.size());
        assertEquals("$.bench.cable", problems.get(0).where());
        assertEquals(Severity.WARNING, problems.get(0).severity());
        assertTrue(problems.get(0).what().contains("0.60 V"), problems.get(0).what());
    }
}
