// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit.internal;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.time.Duration;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Subject;

/** Work on a bench from a thread of its own, for no longer than can be waited. */
public final class BenchTrial {
    private static final Duration LONGEST_WAIT = Duration.ofSeconds(60);
    private static final Duration UNDER_WAY = Duration.ofMillis(50);
    private static final double SILENT_RATIO = 0.1;

    private final Callable<Bench> opening;
    private final Subject subject;
    private final BenchCalls calls;
    private final double recordSeconds;

    public BenchTrial(Callable<Bench> opening, Subject subject, BenchCalls calls, double recordSeconds) {
        this.opening = opening;
        this.subject = subject;
        this.calls = calls;
        this.recordSeconds = recordSeconds;
    }

    /** What is to be done. */
    public interface Work {
        void on(Bench bench) throws Exception;
    }

    public void on(Work work) throws Exception {
        Ended<Boolean> ended = Call.of(LONGEST_WAIT, () -> {
            try (Bench bench = new ClosingOnce(opening.call())) {
                work.on(bench);
            }
            return true;
        });
        if (ended.thrown().isPresent() && ended.thrown().get() instanceof AssertionError failed) {
            throw failed;
        }
        if (ended.thrown().isPresent() && ended.thrown().get() instanceof Exception failed) {
            throw failed;
        }
        assertTrue(ended.value().isPresent(), "The work on the bench " + ended.words());
    }

    /** The same on one that is ready and feeds a tone, where it can feed and record. */
    public void onLoud(Work work) throws Exception {
        on(bench -> {
            assumeTrue(
                    bench.abilities().containsAll(Set.of(Ability.TONE, Ability.WAVEFORM)),
                    "the bench does not feed tones and record them");
            Trial.makeReady(bench, subject);
            bench.feed(calls.tone());
            work.on(bench);
        });
    }

    public double loudness(Bench bench) throws MeasurementException, InterruptedException {
        return Loudness.voltsRms(bench.acquire(recordSeconds).output());
    }

    public boolean isLoud(Bench bench, double loudVoltsRms) throws MeasurementException, InterruptedException {
        return loudness(bench) > SILENT_RATIO * loudVoltsRms;
    }

    /** Fails unless the output is silent, or not recorded at all. */
    public void assertSilent(Bench bench, double loudVoltsRms, String when) throws InterruptedException {
        double silentVoltsRms;
        try {
            silentVoltsRms = loudness(bench);
        } catch (MeasurementException recordsNothing) {
            assertFalse(recordsNothing.getMessage().isBlank(), "The refusal does not say why.");
            return;
        }
        assertTrue(
                silentVoltsRms < SILENT_RATIO * loudVoltsRms,
                "The output is " + silentVoltsRms + " V " + when + "; the tone makes " + loudVoltsRms + " V.");
    }

    /** Fails unless a call is refused with a sentence. */
    public static void assertRefused(Bench bench, String why, Work work) throws Exception {
        try {
            work.on(bench);
        } catch (MeasurementException refused) {
            assertFalse(refused.getMessage().isBlank(), why + ", and the refusal does not say why.");
            return;
        }
        fail(why + "; the call must end with a MeasurementException.");
    }

    /** Returns a recording that is under way. */
    public static Call<Acquisition> recording(Bench bench, double seconds) throws InterruptedException {
        CountDownLatch begun = new CountDownLatch(1);
        Call<Acquisition> recording = Call.start(() -> {
            begun.countDown();
            return bench.acquire(seconds);
        });
        begun.await();
        // A bench that is faster than that is ready by then, which is as well.
        new CountDownLatch(1).await(UNDER_WAY.toMillis(), TimeUnit.MILLISECONDS);
        return recording;
    }

    /** Spares the bench the second call where the work has closed it. */
    private static final class ClosingOnce extends PassingBench {
        private boolean closed;

        ClosingOnce(Bench bench) {
            super(bench);
        }

        @Override
        public void close() throws MeasurementException {
            if (!closed) {
                closed = true;
                super.close();
            }
        }
    }
}
