// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;

class MeasuringTest {
    @Test
    void timesHaveABestAndAMiddle() {
        Times times = new Times();
        times.add(3, 1);
        times.add(2);
        assertEquals(1, times.best());
        assertEquals(2, times.median());
        times.add(10);
        assertEquals(2.5, times.median());
        assertEquals(4, times.count());
    }

    @Test
    void figuresThatDifferAreNoComparison() {
        Agreement agreement = new Agreement(Map.of("volts", 10.001), Map.of("volts", 10.0, "other", 1.0));
        assertDoesNotThrow(() -> agreement.within("volts", 1.1e-4));
        assertDoesNotThrow(() -> agreement.near("volts", 0.0011));
        IOException apart = assertThrows(IOException.class, () -> agreement.within("volts", 0.9e-4));
        assertTrue(apart.getMessage().contains("volts is 10.0010000000 here"), apart.getMessage());
        assertThrows(IOException.class, () -> agreement.near("volts", 0.0009));
        assertThrows(IOException.class, () -> agreement.near("other", 1));
        assertThrows(IOException.class, () -> new Agreement(Map.of("a", Double.NaN), Map.of("a", 1.0))
                .near("a", Double.MAX_VALUE));
    }

    @Test
    void readsWhatAScriptMeasured() throws IOException {
        ScriptRow row = new ScriptRow("log", "a log", "measure-log")
                .with("log-append", new Goal.TimesAsLong(2))
                .with("log-open", new Goal.AtMost(300));
        List<Outcome> outcomes = row.outcomes(List.of(
                "1000000 entries written in 40 s",
                "measured log-open ours=123.4 unit=ms",
                "measured another ours=1 unit=s",
                "measured log-append ours=0.0002 reference=0.00015 unit=s"));
        assertEquals(2, outcomes.size());
        assertEquals("log-append", outcomes.get(0).name());
        assertEquals(OptionalDouble.of(0.00015), outcomes.get(0).reference());
        assertEquals(OptionalDouble.of(123.4), outcomes.get(1).ours());
        assertEquals("ms", outcomes.get(1).unit());
        IOException silent =
                assertThrows(IOException.class, () -> row.outcomes(List.of("measured log-open ours=1 unit=ms")));
        assertTrue(silent.getMessage().contains("log-append"), silent.getMessage());
    }

    @Test
    void readsTheMostOfTheHeapFromJavasLog() {
        assertEquals(
                OptionalDouble.of(76),
                HeapRun.most(List.of(
                        "[0.1s][info][gc] GC(0) Pause Young (Allocation Failure) 17M->2M(61M) 3.5ms",
                        "[0.2s][info][gc] GC(1) Pause Full (Metadata GC Threshold) 76M->5M(61M) 9.5ms")));
        // As the serial collector says it at the end.
        assertEquals(
                OptionalDouble.of(90),
                HeapRun.most(List.of(
                        "[0.1s][info][gc] GC(0) Pause Young (Allocation Failure) 17M->2M(61M) 3.5ms",
                        "[1.0s][info][gc,heap,exit]  def new generation   total 92160K, used 61440K [0x1, 0x2, 0x3)",
                        "[1.0s][info][gc,heap,exit]   eden space 81920K,  10% used [0x1, 0x2, 0x3)",
                        "[1.0s][info][gc,heap,exit]  tenured generation   total 204800K, used 30720K [0x1, 0x2, 0x3)",
                        "[1.0s][info][gc,heap,exit]  Metaspace       used 29K, committed 128K, reserved 1048K")));
        assertEquals(OptionalDouble.empty(), HeapRun.most(List.of("nothing")));
    }

    @Test
    void everyRowHasAWordOfItsOwnAndItsScripts() {
        Set<String> names = new HashSet<>();
        Path checkout = Path.of("../..");
        for (Row row : Benchmarks.rows()) {
            assertTrue(row.name().matches("[a-z-]+"), row.name());
            assertTrue(names.add(row.name()), row.name());
            assertFalse(row.about().isBlank(), row.name());
            if (row instanceof ScriptRow script) {
                assertTrue(Files.isExecutable(checkout.resolve("product").resolve(script.script())), script.script());
            }
        }
        for (String script : List.of("analysis.py", "short_captures.py", "fftw.py", "tone.py", "turns.py")) {
            assertTrue(Files.exists(Path.of("src/main/python").resolve(script)), script);
        }
    }
}
