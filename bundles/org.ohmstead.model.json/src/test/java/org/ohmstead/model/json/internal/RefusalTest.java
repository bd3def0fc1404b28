// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.PartCorrelation;
import org.ohmstead.model.PulseRule;
import org.ohmstead.model.Range;
import org.ohmstead.model.Rest;
import org.ohmstead.model.SharedLog;
import org.ohmstead.model.SheetLayout;
import org.ohmstead.model.SinkSize;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.Supply;
import org.ohmstead.model.VerdictKind;
import org.ohmstead.model.VerdictRule;
import org.ohmstead.model.json.Recording;
import org.ohmstead.units.text.Language;

class RefusalTest {
    /** What the records refuse, by the records themselves, so that a form which they change is missed here. */
    static Stream<Supplier<Object>> refused() {
        return Stream.of(
                () -> new Supply("", 10, 16, 60),
                () -> new Supply("A", -1, 16, 60),
                () -> new Supply("A", 10, 9, 60),
                () -> new Rest("a", -1),
                () -> new Stimulus.ToneBurst(1000, 0.5, 0.2, -20),
                () -> new Stimulus.ToneBurst(1000, 0.02, 0.5, 20),
                () -> new BenchLoad("a", 4, List.of(), 300),
                () -> new Range(2, 1),
                () -> new VerdictRule(VerdictKind.values()[0], 0.7),
                () -> new VerdictRule(null, 0.05),
                () -> new PulseRule(0.5, 5),
                () -> new SinkSize(0.01, 0.06, 30, 0.03, 0.002, 0.85),
                () -> new CaptureUsed("abc", "a.wav", List.of(50.0)),
                () -> new PartCorrelation("a", "a", 0.5),
                () -> new SharedLog("h", 0, "d", "b", ""),
                () -> new CheckStandard(
                        "a", "A", "", "power", "", "W", 2, 0.01, OptionalDouble.empty(), OptionalDouble.empty(), 0),
                () -> SheetLayout.USUAL.withLogoFile("../logo.svg"),
                () -> recording("..", List.of(50.0), -3),
                () -> recording("a.wav", List.of(), -3),
                () -> recording("a.wav", List.of(50.0), Double.NaN));
    }

    private static Recording recording(String file, List<Double> scale, double driveDb) {
        return new Recording(
                "a",
                file,
                driveDb,
                scale,
                13.5,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Instant.EPOCH);
    }

    @ParameterizedTest
    @MethodSource("refused")
    void whatARecordRefusesIsSaidInTheReadersLanguage(Supplier<Object> refused) {
        String message =
                assertThrows(IllegalArgumentException.class, refused::get).getMessage();
        assertEquals(message, Refusal.said(message));
        assertNotEquals(message, Language.speaking(Locale.GERMAN, () -> Refusal.said(message)));
    }

    @Test
    void aRefusalOfAnotherFormStaysAsItIs() {
        assertEquals("no, thank you", Language.speaking(Locale.GERMAN, () -> Refusal.said("no, thank you")));
    }
}
