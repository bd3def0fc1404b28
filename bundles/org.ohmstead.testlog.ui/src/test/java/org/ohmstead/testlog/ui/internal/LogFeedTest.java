// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.Mode;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.search.EntryState;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.testlog.search.IndexColumn;

class LogFeedTest {
    @TempDir
    Path folder;

    private Bench bench;
    private LogSearch search;
    private LogFeed feed;
    private final List<LogRows> answers = new ArrayList<>();
    private final List<String> pages = new ArrayList<>();
    private final List<Exception> failures = new ArrayList<>();
    private int top;

    /** R0001 to R0006 as in {@link Samples#six}, R0002 voided; a note and the void. */
    @BeforeEach
    void setUp() throws Exception {
        bench = new Bench(folder);
        bench.withLog(Samples.six());
        try (TestLog log = TestLog.open(bench.logFile())) {
            log.note("Fan on from here", "N. N.");
            log.voidEntry("R0002", "A lead was loose", "M. M.");
        }
        bench.open();
        search = LogSearch.of(bench.desk);
        feed = new LogFeed(search, () -> top, new LogFeed.Shown() {
            @Override
            public void rows(LogRows rows) {
                answers.add(rows);
            }

            @Override
            public void page(int from, int count) {
                pages.add(from + "+" + count);
            }

            @Override
            public void failed(Exception why) {
                failures.add(why);
            }
        });
        bench.settle();
        feed.turn();
        bench.settle();
        answers.clear();
    }

    @AfterEach
    void tearDown() {
        assertEquals(List.of(), failures);
        bench.close();
    }

    private LogRows shown(Find find) {
        feed.find(find);
        bench.settle();
        return answers.isEmpty() ? LogRows.NONE : answers.get(answers.size() - 1);
    }

    private static List<String> ids(LogRows rows) {
        return IntStream.range(0, rows.size())
                .mapToObj(index -> rows.row(index).orElseThrow().id())
                .toList();
    }

    @ParameterizedTest
    @CsvSource({
        "bridged, 2",
        "BRIDGED 14V, 1",
        "14v bridged, 1",
        "load-2, 2",
        "loose, 1",
        "fan, 1",
        "R0002, 2",
        "state:voided, 1",
        "state:note, 1",
        "nothing of the kind, 0"
    })
    void allWordsAndConditionsMustHold(String text, int count) throws Exception {
        LogRows rows = shown(Find.parse(text));
        assertEquals(count, rows.size(), text);
        assertEquals(count + " of 8", rows.count());
    }

    @Test
    void conditionsMustAllHold() {
        Find stereo = Find.EVERYTHING.withMode(Optional.of(Mode.STEREO)).withLoadOhms(OptionalDouble.of(4));
        assertEquals(List.of("R0001", "R0002"), ids(shown(stereo)));
        assertEquals(List.of("R0001"), ids(shown(stereo.withStates(Set.of(EntryState.VALID)))));
    }

    @Test
    void figuresSortByTheirValueAndWhatHasNoneComesLast() {
        // As texts, 118 and 160 would come before 68.
        feed.clicked(IndexColumn.POWER_WATTS);
        bench.settle();
        assertEquals(
                List.of("R0001", "R0002", "R0003", "R0004", "R0005", "R0006"),
                ids(answers.get(0)).subList(0, 6));
        feed.clicked(IndexColumn.POWER_WATTS);
        bench.settle();
        assertEquals(
                List.of("R0006", "R0005", "R0004", "R0003", "R0002", "R0001"),
                ids(answers.get(1)).subList(0, 6));
    }

    @Test
    void aSecondClickTurnsTheOrderRoundAndAnotherColumnBeginsAnew() {
        feed.clicked(IndexColumn.POWER_WATTS);
        assertEquals(new FindOrder(IndexColumn.POWER_WATTS, false), feed.order());
        feed.clicked(IndexColumn.POWER_WATTS);
        assertEquals(new FindOrder(IndexColumn.POWER_WATTS, true), feed.order());
        feed.clicked(IndexColumn.POWER_WATTS);
        assertEquals(new FindOrder(IndexColumn.POWER_WATTS, false), feed.order());
        feed.clicked(IndexColumn.MODE);
        assertEquals(new FindOrder(IndexColumn.MODE, false), feed.order());
    }

    @Test
    void onlyTheNewestWishIsAnswered() throws Exception {
        feed.find(Find.parse("s"));
        feed.find(Find.parse("bridg"));
        feed.find(Find.parse("bridged"));
        bench.settle();
        assertEquals(1, answers.size());
        assertEquals("2 of 8", answers.get(0).count());
    }

    @Test
    void rowsHoldWhatOnlyTheEntryKnows() {
        LogRows rows = shown(Find.EVERYTHING.withWords(List.of("stereo-4ohm-12V")));
        LogRow row = rows.row(0).orElseThrow();
        assertEquals("B", row.cell(LogColumn.CHANNEL));
        assertEquals("1 % THD_F", row.cell(LogColumn.END_POINT));
    }

    @Test
    void whatIsAddedToTheLogIsFoundWhenItIsReadAnew() throws Exception {
        try (TestLog log = TestLog.open(bench.logFile())) {
            log.note("Fan off again", "N. N.");
        }
        bench.desk.refreshLog();
        bench.settle();
        assertEquals(9, search.state().indexed());
        assertTrue(search.state().upToDate());
        assertEquals(
                "1 of 9", shown(Find.EVERYTHING.withWords(List.of("again"))).count());
    }
}
