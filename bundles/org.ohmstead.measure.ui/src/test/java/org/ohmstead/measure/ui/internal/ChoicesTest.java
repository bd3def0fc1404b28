// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.ohmstead.measure.engine.PlanItem;

class ChoicesTest {
    private static final Choices SOME = Choices.NONE
            .withDriver("org.example.bench", Map.of("address", "10.0.0.7:5025", "words", "a=b&c,d \u03a9"))
            .withMeasured("s1", List.of("org.example.hum", "org.example.hiss"))
            .withMeasurementSetting("org.example.hum", "seconds", "2.5")
            .withOperator("N. N.");

    @Test
    void comesBackFromTheMemoryAsItWas() {
        ConsoleMemory memory = ConsoleMemory.passing();
        SOME.write(memory, "project1");
        assertEquals(SOME, Choices.read(memory, "project1"));
    }

    @Test
    void anotherProjectBeginsWithTheLastBenchAndItsOwnMeasurements() {
        ConsoleMemory memory = ConsoleMemory.passing();
        SOME.write(memory, "project1");
        Choices other = Choices.read(memory, "project2");
        assertEquals("org.example.bench", other.driverId());
        assertEquals(SOME.benchSettings(), other.benchSettings());
        assertEquals("N. N.", other.operator());
        assertEquals(Map.of(), other.measured());
    }

    @Test
    void putsTheChosenMeasurementsInThePlaceOfTheUsualOne() {
        List<PlanItem> usual = List.of(
                new PlanItem("s1", "org.example.power", Map.of()), new PlanItem("s2", "org.example.power", Map.of()));
        assertEquals(
                List.of(
                        new PlanItem("s1", "org.example.hum", Map.of("seconds", "2.5")),
                        new PlanItem("s1", "org.example.hiss", Map.of()),
                        new PlanItem("s2", "org.example.power", Map.of())),
                SOME.items(usual));
        assertEquals(usual, SOME.withMeasured("s1", List.of()).items(usual));
    }

    @Test
    void readsNothingFromNonsense() {
        assertEquals(Map.of("a", "%zz"), TextMap.read("a=%zz&=x&nothing&"));
    }
}
