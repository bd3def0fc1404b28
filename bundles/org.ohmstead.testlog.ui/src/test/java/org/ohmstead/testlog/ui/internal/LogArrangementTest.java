// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.FutureTask;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.ui.internal.LogArrangement.Order;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.WorkProgress;

class LogArrangementTest {
    private static final List<LogRow> ROWS = rows();

    private static final WorkProgress GOING_ON = progress(false);

    private static WorkProgress progress(boolean cancelled) {
        return new WorkProgress() {
            @Override
            public void step(int done, int total, String what) {
                // Nobody looks.
            }

            @Override
            public boolean cancelled() {
                return cancelled;
            }
        };
    }

    /** R0001 to R0006 as in {@link Samples#six}, R0002 voided; a note, a void, an unreadable entry. */
    private static List<LogRow> rows() {
        List<Reading> six = Samples.six();
        List<LogEntry> entries = new ArrayList<>();
        for (int index = 0; index < six.size(); index++) {
            entries.add(
                    index == 1
                            ? Samples.voidedEntry(index + 1, six.get(index))
                            : Samples.entry(index + 1, six.get(index)));
        }
        entries.add(Samples.note(7, "Fan on from here"));
        entries.add(Samples.voiding(8, "R0002"));
        entries.add(Samples.unreadable(9));
        return entries.stream().map(LogRow::of).toList();
    }

    private static List<Long> shown(LogFilter filter, Order order) {
        return LogArrangement.of(ROWS, filter, order, GOING_ON).shown().stream()
                .map(row -> row.entry().sequence())
                .toList();
    }

    @ParameterizedTest
    @CsvSource({
        "'', 9",
        "bridged, 2",
        "BRIDGED 14V, 1",
        "14v bridged, 1",
        "load-2, 2",
        "loose, 2",
        "fan, 1",
        "R0002, 2",
        "unreadable, 1",
        "nothing of the kind, 0"
    })
    void allWordsMustOccurSomewhere(String text, int count) {
        LogFilter filter = new LogFilter(text, Optional.empty(), Optional.empty(), List.of());
        LogArrangement arrangement = LogArrangement.of(ROWS, filter, Order.OF_THE_LOG, GOING_ON);
        assertEquals(count, arrangement.shown().size());
        assertEquals(count + " of 9", arrangement.count());
    }

    @Test
    void conditionsMustAllHold() {
        assertEquals(
                List.of(1L, 2L),
                shown(new LogFilter("", Optional.of(Mode.STEREO), Optional.of(4.0), List.of()), Order.OF_THE_LOG));
        assertEquals(
                List.of(1L),
                shown(
                        new LogFilter("", Optional.of(Mode.STEREO), Optional.of(4.0), List.of(RowState.VALID)),
                        Order.OF_THE_LOG));
        assertEquals(
                List.of(7L, 8L),
                shown(
                        new LogFilter("", Optional.empty(), Optional.empty(), List.of(RowState.NOTE, RowState.VOIDING)),
                        Order.OF_THE_LOG));
    }

    @Test
    void figuresSortByTheirValueAndWhatHasNoneComesFirst() {
        // As texts, 118 and 160 would come before 68.
        assertEquals(
                List.of(7L, 8L, 9L, 1L, 2L, 3L, 4L, 5L, 6L),
                shown(LogFilter.EVERYTHING, new Order(LogColumn.POWER, false)));
        assertEquals(
                List.of(6L, 5L, 4L, 3L, 2L, 1L, 7L, 8L, 9L),
                shown(LogFilter.EVERYTHING, new Order(LogColumn.POWER, true)));
    }

    @Test
    void equalRowsKeepTheOrderOfTheLog() {
        assertEquals(
                List.of(7L, 8L, 9L, 3L, 4L, 1L, 2L, 5L, 6L),
                shown(LogFilter.EVERYTHING, new Order(LogColumn.LOAD, false)));
        assertEquals(
                List.of(1L, 2L, 5L, 6L, 3L, 4L, 7L, 8L, 9L),
                shown(LogFilter.EVERYTHING, new Order(LogColumn.LOAD, true)));
    }

    @Test
    void aSecondClickTurnsTheOrderRound() {
        Order once = Order.OF_THE_LOG.clicked(LogColumn.POWER);
        assertEquals(new Order(LogColumn.POWER, false), once);
        assertEquals(new Order(LogColumn.POWER, true), once.clicked(LogColumn.POWER));
        assertEquals(
                new Order(LogColumn.POWER, false), once.clicked(LogColumn.POWER).clicked(LogColumn.POWER));
        assertEquals(new Order(LogColumn.MODE, false), once.clicked(LogColumn.MODE));
    }

    @Test
    void givesUpWhenToldTo() {
        assertThrows(
                CancellationException.class,
                () -> LogArrangement.of(ROWS, LogFilter.EVERYTHING, Order.OF_THE_LOG, progress(true)));
    }

    /** Work that waits until the test lets it run. */
    private static final class Waiting implements BackgroundWork {
        private final List<Runnable> waiting = new ArrayList<>();
        private final List<FutureTask<?>> futures = new ArrayList<>();

        @Override
        public <T> void start(String title, Task<T> task, Consumer<T> done, Consumer<Exception> failed) {
            FutureTask<T> whole = new FutureTask<>(() -> {
                done.accept(task.run(GOING_ON));
                return null;
            });
            waiting.add(whole);
            futures.add(whole);
        }

        @Override
        public void later(Runnable action) {
            action.run();
        }
    }

    @Test
    void aLongLogIsSortedElsewhereAndOnlyTheNewestWishIsAnswered() throws Exception {
        Waiting work = new Waiting();
        List<LogArrangement> answers = new ArrayList<>();
        List<Exception> failures = new ArrayList<>();
        RowFeed feed = new RowFeed(work, answers::add, failures::add);
        Reading reading = Samples.six().get(0);
        Reading bridged = Samples.six().get(5);
        List<LogEntry> many = new ArrayList<>();
        for (int sequence = 1; sequence <= RowFeed.AT_ONCE + 1; sequence++) {
            many.add(Samples.entry(sequence, sequence % 10 == 0 ? bridged : reading));
        }
        feed.entries(many);
        feed.filter(new LogFilter("bridg", Optional.empty(), Optional.empty(), List.of()));
        feed.filter(new LogFilter("bridged", Optional.empty(), Optional.empty(), List.of()));
        assertEquals(3, work.waiting.size());
        assertTrue(answers.isEmpty());
        work.waiting.forEach(Runnable::run);
        for (FutureTask<?> future : work.futures) {
            future.get();
        }
        assertEquals(List.of(), failures);
        assertEquals(1, answers.size());
        assertEquals("200 of 2001", answers.get(0).count());
    }

    @Test
    void rowsOfEntriesThatStayedAreTakenOver() {
        List<LogArrangement> answers = new ArrayList<>();
        RowFeed feed = new RowFeed(new Waiting(), answers::add, failure -> {});
        List<LogEntry> entries = ROWS.stream().map(LogRow::entry).toList();
        feed.entries(entries.subList(0, 3));
        LogEntry first = entries.get(0);
        LogEntry voided = Samples.voidedEntry(1, first.reading().orElseThrow());
        feed.entries(List.of(voided, entries.get(1), entries.get(2), entries.get(3)));
        assertEquals(RowState.VOIDED, answers.get(1).all().get(0).state());
        assertTrue(answers.get(0).all().get(2) == answers.get(1).all().get(2));
    }
}
