// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.logging.Logger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class DaemonAlarmTest {
    private static final Logger LOGGER = Logger.getLogger(DaemonAlarm.class.getName());

    @Test
    void repeatsUntilItIsTakenAway() throws Exception {
        try (Alarm alarm = new DaemonAlarm("Test alarm")) {
            CountDownLatch three = new CountDownLatch(3);
            Registration registration = alarm.every(Duration.ofMillis(5), three::countDown);
            assertTrue(three.await(30, TimeUnit.SECONDS));
            registration.close();
        }
    }

    @Test
    void aFailureDoesNotEndTheRepeating() throws Exception {
        AtomicInteger reports = new AtomicInteger();
        // Counts what is reported, and keeps it out of the test's output.
        LOGGER.setFilter(line -> line.getThrown() instanceof IllegalStateException && reports.incrementAndGet() < 0);
        try (Alarm alarm = new DaemonAlarm("Test alarm")) {
            CountDownLatch three = new CountDownLatch(3);
            Registration registration = alarm.every(Duration.ofMillis(5), () -> {
                three.countDown();
                throw new IllegalStateException("meant by the test");
            });
            assertTrue(three.await(30, TimeUnit.SECONDS));
            registration.close();
            CountDownLatch quiet = new CountDownLatch(1);
            alarm.soon(quiet::countDown);
            assertTrue(quiet.await(30, TimeUnit.SECONDS));
            assertTrue(reports.get() >= 2, "a failure is reported before the next ringing");
        } finally {
            LOGGER.setFilter(null);
        }
    }

    @Test
    void whatIsTakenBackInTimeIsNotDone() throws Exception {
        try (Alarm alarm = new DaemonAlarm("Test alarm")) {
            AtomicBoolean rang = new AtomicBoolean();
            CountDownLatch later = new CountDownLatch(1);
            alarm.after(Duration.ofMillis(40), () -> rang.set(true)).close();
            alarm.after(Duration.ofMillis(80), later::countDown);
            assertTrue(later.await(30, TimeUnit.SECONDS));
            assertFalse(rang.get());
        }
    }
}
