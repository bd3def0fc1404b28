// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.ohmstead.report.SampleSheet;

class SupplyWordsTest {
    private static final String FIRST = "Unregulated: near 12.9 V each extra volt gives about 16 % more power.";
    private static final String SECOND = "Unregulated: near 12.7 V each extra volt gives about 17 % more power.";
    private static final String WEAKER = "Unregulated: near 12.6 V each extra volt gives about 11 % more power.";

    @Test
    void mergesSentencesThatDifferLittle() {
        assertTrue(SupplyWords.nearlySame(FIRST, SECOND));
        assertEquals(
                "Unregulated: near 12.7 to 12.9 V each extra volt gives about 16 to 17 % more power.",
                SupplyWords.merged(List.of(FIRST, SECOND)));
        assertEquals(FIRST, SupplyWords.merged(List.of(FIRST, FIRST)));
    }

    @Test
    void keepsApartWhatDiffersMuchOrInWords() {
        assertFalse(SupplyWords.nearlySame(FIRST, WEAKER));
        assertFalse(SupplyWords.nearlySame(FIRST, FIRST.replace("Unregulated", "Partly regulated")));
    }

    @Test
    void saysOnceWhatHoldsForAllLoads() {
        // The sample's loads share one supply and lose the same peak volts, so its growth per volt is the same for all.
        List<String> lines =
                SupplyWords.of(CurveGroup.of(SampleSheet.plain().build().curves()));
        assertEquals(
                1,
                lines.stream()
                        .filter(line -> line.startsWith("Continuous power, stereo"))
                        .count(),
                lines.toString());
        assertTrue(
                lines.get(0).startsWith("Continuous power, stereo, 8, 4 and 2\u00a0\u03a9: Unregulated: near "),
                lines.toString());
    }
}
