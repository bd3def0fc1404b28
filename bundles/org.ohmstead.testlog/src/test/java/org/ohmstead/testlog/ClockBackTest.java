// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.testlog.search.IndexProgress;
import org.ohmstead.testlog.search.LogIndex;

/** A log whose computer's clock is set back while it is used. */
class ClockBackTest {
    @TempDir
    private Path folder;

    private final HandClock clock = new HandClock();

    /** A clock that is set by hand. */
    private static final class HandClock extends Clock {
        private Instant now = Instant.parse("2026-03-03T12:00:00Z");

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }

        @Override
        public Instant instant() {
            return now;
        }
    }

    @Test
    void theOrderIsThatOfTheLogAndEachEntryHasTheTimeThatTheClockShowed() throws Exception {
        List<String> added = new ArrayList<>();
        Path file = folder.resolve(TestLog.FILE_NAME);
        try (TestLog log = TestLog.open(file, clock)) {
            for (String time : List.of("2026-03-03T12:00:00Z", "2026-03-01T08:00:00Z", "2026-03-03T12:00:01Z")) {
                clock.now = Instant.parse(time);
                added.add(log.append(SampleReadings.reading(added.size())).id());
            }
            assertEquals(added, log.readings().stream().map(LogEntry::id).toList());
            assertEquals(
                    Instant.parse("2026-03-01T08:00:00Z"),
                    log.entry(added.get(1)).orElseThrow().recordedAt());
            assertTrue(log.verify().intact(), "the chain does not hang on the clock");
        }
        try (TestLog log = TestLog.open(file, clock)) {
            clock.now = Instant.parse("1999-12-31T23:59:59Z");
            log.note("The clock's battery is empty.", "");
            assertTrue(log.verify().intact());
            assertEquals(4, log.entries(LogQuery.everything()).size());
        }
    }

    @Test
    void aSearchByDayFindsWhatTheClockShowed() throws Exception {
        try (TestLog log = TestLog.open(folder.resolve(TestLog.FILE_NAME), clock);
                LogIndex index = LogIndex.open(LogIndex.beside(log.file()), log.rows())) {
            log.note("Before the clock was set back.", "");
            index.refresh(IndexProgress.NONE);
            clock.now = Instant.parse("2026-03-01T08:00:00Z");
            String early = log.note("After it.", "").id();
            index.refresh(IndexProgress.NONE);
            assertEquals(
                    1,
                    index.find(Find.parse("from:2026-03-01 to:2026-03-01"), FindOrder.AS_LOGGED)
                            .size(),
                    early);
            assertEquals(
                    1,
                    index.find(Find.parse("from:2026-03-02"), FindOrder.AS_LOGGED)
                            .size());
            assertEquals(2, index.find(Find.EVERYTHING, FindOrder.NEWEST_FIRST).size());
            assertTrue(log.verify().intact());
        }
    }

    @Test
    void whoAddsIsToldOnceAndTheCheckTellsItForGood() throws Exception {
        List<String> told = new ArrayList<>();
        Path file = folder.resolve(TestLog.FILE_NAME);
        try (TestLog log = TestLog.open(file, clock)) {
            log.whenClockWentBack(told::add);
            log.append(SampleReadings.reading(0));
            clock.now = Instant.parse("2026-03-03T11:00:00.5Z");
            String id = log.append(SampleReadings.reading(1)).id();
            clock.now = Instant.parse("2026-03-03T11:00:02Z");
            log.append(SampleReadings.reading(2));
            log.note("All is well again.", "");
            assertEquals(1, told.size());
            assertTrue(
                    told.get(0)
                            .startsWith("The computer's clock was set back: the entry " + id
                                    + " was added to the log at 2026-03-03T11:00:00.500Z, the one ahead of it at"
                                    + " 2026-03-03T12:00:00Z."),
                    told.get(0));
        }
        try (TestLog log = TestLog.openReadOnly(file)) {
            VerifyReport report = log.verify();
            assertTrue(report.intact());
            assertEquals(1, report.clockStepCount());
            ClockStep step = report.clockSteps().get(0);
            assertEquals(2, step.sequence());
            assertEquals("R0002", step.entryId());
            assertTrue(
                    step.sentence().startsWith("The entry R0002, number 2 of the log, says that it was added at"),
                    step.sentence());
        }
    }

    @Test
    void anotherProgramThatWaitedItsTurnIsNoClockThatWentBack() throws Exception {
        List<String> told = new ArrayList<>();
        Path file = folder.resolve(TestLog.FILE_NAME);
        try (TestLog one = TestLog.open(file, clock);
                TestLog other = TestLog.open(file, clock)) {
            one.whenClockWentBack(told::add);
            other.whenClockWentBack(told::add);
            one.note("First.", "");
            clock.now = clock.now.minusSeconds(TestLog.BUSY_SECONDS);
            other.note("Its time was taken before it waited.", "");
            clock.now = clock.now.plusMillis(1);
            one.note("Later again.", "");
            assertEquals(List.of(), told);
            assertEquals(0, one.verify().clockStepCount());
            clock.now = clock.now.minusSeconds(TestLog.BUSY_SECONDS).minusMillis(1);
            other.note("Now it was set back.", "");
            assertEquals(1, told.size());
            assertEquals(1, one.verify().clockStepCount());
        }
    }

    @Test
    void ofManyPlacesTheFirstAndTheLastAreTold() throws Exception {
        try (TestLog log = TestLog.open(folder.resolve(TestLog.FILE_NAME), clock)) {
            for (int number = 0; number <= 130; number++) {
                log.note("Each an hour earlier.", "");
                clock.now = clock.now.minusSeconds(3600);
            }
            VerifyReport report = log.verify();
            assertTrue(report.intact());
            assertEquals(130, report.clockStepCount());
            assertEquals(100, report.clockSteps().size());
            assertEquals(2, report.clockSteps().get(0).sequence());
            assertEquals(131, report.clockSteps().get(99).sequence());
        }
    }

    @Test
    void aJoinedChainsClockIsItsOwn() throws Exception {
        clock.now = Instant.parse("2030-01-01T00:00:00Z");
        try (TestLog other = TestLog.open(folder.resolve("other.db"), clock)) {
            other.note("One.", "");
            clock.now = Instant.parse("2026-01-01T00:00:00Z");
            other.note("Two.", "");
            try (TestLog log = TestLog.open(folder.resolve(TestLog.FILE_NAME), clock)) {
                log.note("Ours.", "");
                log.join(other, "Bench 2", "");
                VerifyReport report = log.verify();
                assertTrue(report.intact());
                assertEquals(1, report.clockStepCount(), report.clockSteps().toString());
                assertEquals("B/N0002", report.clockSteps().get(0).entryId());
                assertTrue(report.clockSteps().get(0).sentence().contains("joined chain B"));
            }
        }
    }
}
