// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DriverUsed;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Mode;

class MeasuredFiguresJsonTest {
    private static final MeasuredFigure FACTOR =
            new MeasuredFigure("dampingFactor", "A", "1 kHz", 71.0 / 0.9, "", OptionalDouble.of(0.1 + 0.2));

    private static MeasuredFigures figures() {
        return new MeasuredFigures(
                "s1",
                Mode.STEREO,
                "4ohm",
                14.4,
                Instant.parse("2026-03-02T09:14:05.250Z"),
                new DriverUsed("org.example.bench", "1.0.0", BenchKind.SIMULATED, Map.of("seed", "7", "fault", "none")),
                Map.of("seconds", "0.5", "limitRatio", "0.01"),
                List.of(FACTOR, new MeasuredFigure("impedance", "B", "", 0.0005, "\u03a9", OptionalDouble.empty())),
                new Conditions(OptionalDouble.of(22.6), OptionalDouble.empty()),
                Samples.reading().provenance(),
                List.of("The load was warm.", "\u20ac"));
    }

    @Test
    void figuresReadBackEqualToTheLastBit() throws Exception {
        String text = MeasuredFiguresJson.toCanonicalText(figures());
        assertEquals(figures(), MeasuredFiguresJson.fromText(text));
        assertEquals(text, MeasuredFiguresJson.toCanonicalText(MeasuredFiguresJson.fromText(text)));
        assertEquals("power-at-end-point", figures().measurementId());
    }

    @Test
    void theTextIsCanonical() {
        String text = MeasuredFiguresJson.toCanonicalText(figures());
        assertTrue(
                text.startsWith("{\"conditions\":{\"ambientCelsius\":22.6},\"driver\":{\"id\":\"org.example.bench\","),
                text);
        assertTrue(text.contains("\"settings\":{\"fault\":\"none\",\"seed\":\"7\"}"), text);
        assertTrue(text.contains("\"standardUncertainty\":0.30000000000000004"), text);
    }

    @Test
    void fieldsOfANewerOhmsteadArePassedOver() throws Exception {
        String text = MeasuredFiguresJson.toCanonicalText(figures());
        assertEquals(figures(), MeasuredFiguresJson.fromText("{\"aNewField\":[1]," + text.substring(1)));
    }

    @Test
    void wrongFiguresAreRefusedWithTheirPath() {
        String text = MeasuredFiguresJson.toCanonicalText(figures());
        ProjectFileException failure = assertThrows(
                ProjectFileException.class,
                () -> MeasuredFiguresJson.fromText(text.replace("\"kind\":\"simulated\"", "\"kind\":\"dreamt\"")));
        assertEquals("$.driver.kind", failure.jsonPath());
        assertThrows(
                ProjectFileException.class,
                () -> MeasuredFiguresJson.fromText(text.replace("\"seed\":\"7\"", "\"seed\":7")));
    }

    @Test
    void aFigureStandsOnceForAChannelAndAPlace() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new MeasuredFigures(
                        "s1",
                        Mode.STEREO,
                        "4ohm",
                        14.4,
                        Instant.EPOCH,
                        figures().driver(),
                        Map.of(),
                        List.of(FACTOR, FACTOR),
                        figures().conditions(),
                        figures().provenance(),
                        List.of()));
        assertThrows(
                IllegalArgumentException.class,
                () -> new MeasuredFigure("x", "", "", Double.NaN, "V", OptionalDouble.empty()));
    }
}
