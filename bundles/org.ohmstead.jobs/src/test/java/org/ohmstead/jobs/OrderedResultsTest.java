// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.ohmstead.testlog.TestLogException;

class OrderedResultsTest {
    @Test
    void handsOutInTheTasksOrderThoughTheFirstEndsLast() throws Exception {
        CountDownLatch secondEnded = new CountDownLatch(1);
        List<Callable<String>> tasks = List.of(
                () -> {
                    assertTrue(secondEnded.await(10, TimeUnit.SECONDS));
                    return "first";
                },
                () -> {
                    secondEnded.countDown();
                    return "second";
                });
        try (OrderedResults<String> results = new OrderedResults<>(2, tasks)) {
            assertEquals("first", results.next());
            assertEquals("second", results.next());
        }
    }

    @Test
    void runsOnlyAFewTasksAhead() throws Exception {
        AtomicInteger begun = new AtomicInteger();
        List<Callable<Integer>> tasks = IntStream.range(0, 100)
                .mapToObj(number -> (Callable<Integer>) () -> {
                    begun.incrementAndGet();
                    return number;
                })
                .toList();
        List<Integer> got = new ArrayList<>();
        try (OrderedResults<Integer> results = new OrderedResults<>(2, tasks)) {
            for (int i = 0; i < 50; i++) {
                got.add(results.next());
                assertTrue(begun.get() <= got.size() + 4, begun + " begun when " + got.size() + " were handed out");
            }
        }
        assertEquals(IntStream.range(0, 50).boxed().toList(), got);
    }

    @Test
    void throwsWhatATaskThrew() {
        TestLogException failure = new TestLogException("The disk is full.");
        List<Callable<String>> tasks = List.of(
                () -> {
                    throw failure;
                },
                () -> {
                    throw new IllegalArgumentException("wrong");
                });
        try (OrderedResults<String> results = new OrderedResults<>(1, tasks)) {
            assertSame(failure, assertThrows(TestLogException.class, results::next));
            assertThrows(IllegalArgumentException.class, results::next);
        }
    }

    @Test
    void waitsOnClosingForTasksThatRunAndDropsThoseThatDoNot() throws Exception {
        CountDownLatch running = new CountDownLatch(1);
        CountDownLatch mayEnd = new CountDownLatch(1);
        AtomicBoolean ended = new AtomicBoolean();
        AtomicBoolean secondRan = new AtomicBoolean();
        List<Callable<String>> tasks = List.of(
                () -> {
                    running.countDown();
                    assertTrue(mayEnd.await(10, TimeUnit.SECONDS));
                    ended.set(true);
                    return "";
                },
                () -> {
                    secondRan.set(true);
                    return "";
                });
        Thread closer;
        OrderedResults<String> results = new OrderedResults<>(1, tasks);
        assertTrue(running.await(10, TimeUnit.SECONDS));
        closer = new Thread(results::close);
        closer.start();
        closer.join(50);
        assertTrue(closer.isAlive(), "closing did not wait");
        mayEnd.countDown();
        closer.join(10_000);
        assertTrue(ended.get());
        assertEquals(false, secondRan.get());
    }
}
