// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class ReadingJsonTest {
    @Test
    void aReadingReadsBackEqualToTheLastBit() throws Exception {
        String text = ReadingJson.toCanonicalText(Samples.reading());
        assertEquals(Samples.reading(), ReadingJson.fromText(text));
        assertEquals(text, ReadingJson.toCanonicalText(ReadingJson.fromText(text)));
    }

    @Test
    void theTextIsCanonical() {
        String text = ReadingJson.toCanonicalText(Samples.reading());
        assertTrue(
                text.startsWith("{\"channels\":[{\"channel\":\"A\",\"correlations\":[{\"coefficient\":-0.25,"), text);
        assertTrue(text.contains("\"standardUncertaintyWatts\":0.30000000000000004"), text);
        assertTrue(text.contains("{\"order\":2,\"ratioToFundamental\":1e-21}"), text);
        assertFalse(text.contains("\n"), text);
    }

    @Test
    void aWrongReadingIsRefusedWithItsPath() {
        String text = ReadingJson.toCanonicalText(Samples.reading());
        ProjectFileException failure = assertThrows(
                ProjectFileException.class,
                () -> ReadingJson.fromText(text.replace("\"outcome\":\"reached\"", "\"outcome\":\"done\"")));
        assertEquals("$.channels[0].outcome", failure.jsonPath());
        assertThrows(
                ProjectFileException.class,
                () -> ReadingJson.fromText(text.replace("\"sha256\":\"ab", "\"sha256\":\"XX")));
        assertThrows(ProjectFileException.class, () -> ReadingJson.fromText(text.substring(1)));
    }
}
