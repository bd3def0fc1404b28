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
}
