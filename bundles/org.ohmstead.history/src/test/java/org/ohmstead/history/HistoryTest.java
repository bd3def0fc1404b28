// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.testlog.search.IndexColumn;
import org.ohmstead.testlog.search.IndexProgress;
import org.ohmstead.testlog.search.LogIndex;

class HistoryTest {
    private static final FindOrder BY_POWER = new FindOrder(IndexColumn.POWER_WATTS, true);

    @TempDir
    private Path folder;

    private final Project kestrel = SampleProject.with();
    private TestLog first;
    private TestLog second;

    @BeforeEach
    void openLogs() throws Exception {
        first = TestLog.open(Files.createDirectories(folder.resolve("kestrel")).resolve(TestLog.FILE_NAME));
        second = TestLog.open(Files.createDirectories(folder.resolve("heron")).resolve(TestLog.FILE_NAME));
    }

    @AfterEach
    void closeLogs() throws TestLogException {
        first.close();
        second.close();
    }

    private History open() throws TestLogException {
        Project heron = kestrel.withAmplifier(kestrel.amplifier().withModel("Heron"));
        History history = History.open(
                List.of(HistorySource.of("kestrel", first, kestrel), HistorySource.of("heron", second, heron)));
        history.refresh(IndexProgress.NONE);
        return history;
    }

    private static void add(TestLog log, double watts) throws TestLogException {
        log.append(SampleReading.at("2026-03-02T09:00:00Z")
                .channel(14.4, watts, 0.3, 0.4)
                .reading());
    }

    private static List<Double> watts(List<HistoryEntry> entries) {
        return entries.stream()
                .map(each -> each.entry().powerWatts().orElse(-1))
                .toList();
    }

    @Test
    void findsInAllSourcesInOneOrder() throws Exception {
        List<Double> all = new ArrayList<>();
        Random random = new Random(8);
        for (int i = 0; i < 700; i++) {
            double watts = 50 + i / 10.0;
            all.add(watts);
            add(random.nextInt(3) == 0 ? first : second, watts);
        }
        first.note("Lead was loose.", "N. N.");
        Collections.reverse(all);
        try (History history = open()) {
            HistoryFound found = history.find(Find.EVERYTHING, BY_POWER);
            assertEquals(701, found.size());
            List<Double> last = watts(found.page(650, 100));
            assertEquals(51, last.size());
            assertEquals(all.subList(650, 700), last.subList(0, 50));
            assertEquals(-1.0, last.get(50), "what has no power comes last");
            assertEquals(all, watts(found.page(0, 700)));
            assertEquals(all.subList(255, 258), watts(found.page(255, 3)));
            assertTrue(found.page(701, 5).isEmpty());
            assertTrue(found.page(3, 0).isEmpty());
            HistoryEntry note = history.find(Find.parse("loose"), FindOrder.AS_LOGGED)
                    .page(0, 9)
                    .get(0);
            assertEquals("kestrel", note.source());
            assertEquals(
                    "Lead was loose.", history.entry(note).note().orElseThrow().text());
        }
        assertTrue(Files.exists(LogIndex.beside(first.file())), "the index lies beside the log");
    }

    @Test
    void anEntryCountsOnlyWhenItCounts() throws Exception {
        add(first, 100);
        add(first, 101);
        first.voidEntry("R0001", "load was hot", "N. N.");
        try (History history = open()) {
            assertEquals(1, history.entries("kestrel", Find.EVERYTHING).size());
            assertEquals(
                    101,
                    history.entries("kestrel", Find.EVERYTHING)
                            .get(0)
                            .reading()
                            .orElseThrow()
                            .weakestChannel()
                            .powerWatts());
            assertThrows(IllegalArgumentException.class, () -> history.entries("robin", Find.EVERYTHING));
        }
    }

    @Test
    void comparesAcrossProjects() throws Exception {
        add(first, 100);
        add(second, 110);
        try (History history = open()) {
            List<Subject> subjects = history.subjects(Find.EVERYTHING, List.of());
            assertEquals(
                    List.of("Made-up Workshop M-1 no. 0001", "Made-up Workshop Heron no. 0001"),
                    subjects.stream().map(Subject::name).toList());
            Comparison comparison = Comparison.of(subjects, ComparisonRequest.at(14.4, 4, Mode.STEREO));
            assertEquals(-10, comparison.differences().get(0).watts().value(), 1e-9);
            assertFalse(comparison.differences().get(0).sharesInstruments(), "their benches are not known to be one");
            assertEquals(
                    1,
                    history.trends("power", Find.EVERYTHING, Period.ALWAYS, 0.05)
                            .get("heron")
                            .size());
            assertEquals(List.of("N. N."), history.distinct(IndexColumn.OPERATOR));
        }
    }

    @Test
    void aLogWithoutAProjectKnowsTheSpecimensThatReadingsName() throws Exception {
        add(first, 100);
        first.append(SampleReading.at("2026-03-02T09:00:00Z")
                .of("Robin", "7", "Bench 2")
                .channel(14.4, 90, 0.3, 0.4)
                .reading());
        HistorySource shared = new HistorySource("shared", first.rows(), Optional.empty(), Optional.empty());
        try (History history = History.open(List.of(shared))) {
            assertEquals(
                    0, history.find(Find.EVERYTHING, BY_POWER).size(), "nothing is known before the first refresh");
            assertEquals(2, history.refresh(IndexProgress.NONE));
            assertEquals(
                    List.of("Robin no. 7"),
                    history.subjects(Find.EVERYTHING, List.of()).stream()
                            .map(Subject::name)
                            .toList());
            assertEquals(
                    List.of("Robin no. 7, 2026-01-01 to 2026-12-31"),
                    history.subjects(Find.EVERYTHING, List.of(Period.parse("2025"), Period.parse("2026"))).stream()
                            .map(Subject::name)
                            .toList());
        }
    }

    @Test
    void namesakesAmongSourcesAreRefused() {
        HistorySource source = HistorySource.of("kestrel", first, kestrel);
        assertThrows(IllegalArgumentException.class, () -> History.open(List.of(source, source)));
    }
}
