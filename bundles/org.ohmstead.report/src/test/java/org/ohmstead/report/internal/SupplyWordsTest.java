// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.ohmstead.report.SampleSheet;

class SupplyWordsTest {
    private static final Speech ENGLISH = Speech.in(Locale.ENGLISH);
    private static final Speech GERMAN = Speech.in(Locale.GERMAN);
    private static final String FIRST = "Unregulated: near 12.9 V each extra volt gives about 16 % more power.";
    private static final String SECOND = "Unregulated: near 12.7 V each extra volt gives about 17 % more power.";
    private static final String WEAKER = "Unregulated: near 12.6 V each extra volt gives about 11 % more power.";

    @Test
    void mergesSentencesThatDifferLittle() {
        assertTrue(SupplyWords.nearlySame(FIRST, SECOND));
        assertEquals(
                "Unregulated: near 12.7 to 12.9 V each extra volt gives about 16 to 17 % more power.",
                SupplyWords.merged(List.of(FIRST, SECOND), ENGLISH));
        assertEquals(FIRST, SupplyWords.merged(List.of(FIRST, FIRST), ENGLISH));
    }

    /** In German a decimal comma is part of a number, and a comma between clauses is not. */
    @Test
    void mergesSentencesWithDecimalCommas() {
        String first = "Ungeregelt: nahe 12,9 V bringt jedes weitere Volt etwa 16 %, 2 mehr.";
        String second = "Ungeregelt: nahe 12,7 V bringt jedes weitere Volt etwa 17 %, 2 mehr.";
        assertTrue(SupplyWords.nearlySame(first, second));
        assertEquals(
                "Ungeregelt: nahe 12,7 bis 12,9 V bringt jedes weitere Volt etwa 16 bis 17 %, 2 mehr.",
                SupplyWords.merged(List.of(first, second), GERMAN));
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
                SupplyWords.of(CurveGroup.of(SampleSheet.plain().build().curves()), ENGLISH);
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
