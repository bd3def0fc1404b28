// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.ohmstead.history.SampleReading;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.testlog.search.IndexColumn;
import org.ohmstead.testlog.search.IndexProgress;
import org.ohmstead.testlog.search.IndexedEntry;
import org.ohmstead.testlog.search.LogIndex;

class EntryOrderTest {
    @TempDir
    private Path folder;

    private List<IndexedEntry> ordered(FindOrder order) throws Exception {
        try (TestLog log = TestLog.open(folder.resolve(TestLog.FILE_NAME))) {
            log.append(SampleReading.at("2026-03-02T09:00:00Z")
                    .of("beta", "2", "Bench 2")
                    .channel(13, 90, 0.3, 0.4)
                    .reading());
            log.append(SampleReading.at("2026-03-01T09:00:00Z")
                    .of("Alpha", "", "")
                    .operator("ada")
                    .channel(14, 120, 0.5, 0.4, EndPointOutcome.NOT_REACHED)
                    .reading());
            log.note("Something else.", "Ben");
            log.append(SampleReading.at("2026-03-03T09:00:00Z")
                    .of("gamma", "1", "Bench 1")
                    .channel(12, 100, 0.2, 0.4)
                    .reading());
            log.voidEntry("R0001", "load was hot", "");
            try (LogIndex index = LogIndex.inMemory(log.rows())) {
                index.refresh(IndexProgress.NONE);
                return index.find(Find.EVERYTHING, order).page(0, 10);
            }
        }
    }

    @ParameterizedTest
    @EnumSource(IndexColumn.class)
    void agreesWithTheIndexInEveryColumn(IndexColumn column) throws Exception {
        FindOrder order = new FindOrder(column, false);
        List<IndexedEntry> entries = ordered(order);
        assertEquals(5, entries.size());
        Comparator<IndexedEntry> comparator = EntryOrder.of(order);
        for (int i = 1; i < entries.size(); i++) {
            int compared = comparator.compare(entries.get(i - 1), entries.get(i));
            assertTrue(compared <= 0, entries.get(i - 1) + " comes before " + entries.get(i));
        }
    }

    @Test
    void turnsRoundButLeavesWhatLacksTheColumnLast() throws Exception {
        FindOrder falling = new FindOrder(IndexColumn.POWER_WATTS, true);
        List<IndexedEntry> entries = ordered(falling);
        Comparator<IndexedEntry> comparator = EntryOrder.of(falling);
        assertEquals(120, entries.get(0).powerWatts().orElseThrow());
        assertTrue(comparator.compare(entries.get(0), entries.get(1)) < 0);
        assertTrue(comparator.compare(entries.get(2), entries.get(3)) < 0, "a note has no power");
    }
}
