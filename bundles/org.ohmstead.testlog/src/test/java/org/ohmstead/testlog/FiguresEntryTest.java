// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DriverUsed;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Mode;

class FiguresEntryTest {
    @TempDir
    Path folder;

    private static MeasuredFigures figures(String stepId) {
        return new MeasuredFigures(
                stepId,
                Mode.BRIDGED,
                "4ohm",
                14.4,
                Instant.parse("2026-03-02T09:14:05Z"),
                new DriverUsed("org.example.bench", "1.0.0", BenchKind.SIMULATED, Map.of()),
                Map.of("seconds", "1.0"),
                List.of(new MeasuredFigure("hum", "A", "", 0.0004, "V", OptionalDouble.empty())),
                new Conditions(OptionalDouble.empty(), OptionalDouble.empty()),
                SampleReadings.reading(1).provenance(),
                List.of());
    }

    private Path file() {
        return folder.resolve(TestLog.FILE_NAME);
    }

    private static List<String> ids(List<LogEntry> entries) {
        return entries.stream().map(LogEntry::id).toList();
    }

    @Test
    void figuresReadBackEqualAreChainedAndCanBeVoided() throws Exception {
        try (TestLog log = TestLog.open(file())) {
            log.append(SampleReadings.reading(1));
            LogEntry appended = log.append(figures("s2"));
            assertEquals("F0001", appended.id());
            assertEquals(Optional.of(figures("s2")), appended.figures());
            assertTrue(appended.readable());
            log.append(figures("s3"));
            log.voidEntry("f0001", "a lead was loose", "N. N.");
        }
        try (TestLog log = TestLog.openReadOnly(file())) {
            assertEquals(List.of("R0001", "F0001", "F0002", "V0001"), ids(log.entries(LogQuery.everything())));
            assertEquals(List.of("F0002"), ids(log.entries(LogQuery.validFigures())));
            assertEquals(List.of("F0001"), ids(log.entries(LogQuery.everything().withStep("s2"))));
            assertEquals(
                    List.of("F0001", "F0002"),
                    ids(log.entries(LogQuery.everything().withMode(Mode.BRIDGED))));
            assertEquals(List.of("R0001"), ids(log.readings()));
            assertTrue(log.verify().intact(), log.verify().toString());
        }
    }

    @Test
    void aReadingAndItsFiguresAreAddedTogether() throws Exception {
        try (TestLog log = TestLog.open(file())) {
            List<LogEntry> both = log.append(SampleReadings.reading(1), figures("s1"));
            assertEquals(List.of("R0001", "F0001"), ids(both));
            assertEquals(both.get(0).hash(), both.get(1).previousHash());
            assertTrue(log.verify().intact());
        }
    }

    @Test
    void changedFiguresAreFound() throws Exception {
        try (TestLog log = TestLog.open(file())) {
            log.append(figures("s2"));
            log.append(figures("s3"));
        }
        RawLog.dropTriggers(file());
        RawLog.execute(file(), "UPDATE entry SET body = replace(body, '0.0004', '0.0003') WHERE seq = 1");
        RawLog.execute(file(), "UPDATE entry SET body = '{}' WHERE seq = 2");
        try (TestLog log = TestLog.openReadOnly(file())) {
            List<VerifyFault> faults = log.verify().faults();
            assertTrue(faults.stream()
                    .anyMatch(fault -> fault.kind() == VerifyFault.Kind.CONTENT_CHANGED
                            && fault.entryId().equals("F0001")));
            assertTrue(faults.stream()
                    .anyMatch(fault -> fault.kind() == VerifyFault.Kind.UNREADABLE
                            && fault.entryId().equals("F0002")));
            assertFalse(log.entry("F0002").orElseThrow().readable());
        }
    }

    @Test
    void figuresThatAreVoidedTwiceAreRefused() throws Exception {
        try (TestLog log = TestLog.open(file())) {
            log.append(figures("s2"));
            log.voidEntry("F0001", "wrong", "");
            assertThrows(TestLogException.class, () -> log.voidEntry("F0001", "wrong", ""));
        }
    }
}
