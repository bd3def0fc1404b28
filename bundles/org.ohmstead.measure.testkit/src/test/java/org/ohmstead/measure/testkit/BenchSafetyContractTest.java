// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.testkit.BenchDriverContractTest.Odd;
import org.ohmstead.measure.testkit.internal.PassingBench;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;

/** What a bench may do wrong where it is about safety and about its end: each fails in that point alone. */
class BenchSafetyContractTest {
    private static final CountDownLatch NEVER = new CountDownLatch(1);

    static class FeedsOnConnecting extends Odd {
        @Override
        Bench odd(PracticeBench good, Settings settings) {
            return new PassingBench(good) {
                private Feed last = new Feed.Silence();

                @Override
                public void feed(Feed feed) throws MeasurementException, InterruptedException {
                    super.feed(feed);
                    last = feed;
                }

                @Override
                public void connect(Mode mode, BenchLoad load) throws MeasurementException, InterruptedException {
                    super.connect(mode, load);
                    super.feed(last);
                }
            };
        }
    }

    @Test
    void aToneAfterALoadWasConnected() {
        Verdict.of(FeedsOnConnecting.class).fails("isSilentUntilItIsToldToFeed", "after a load was connected");
    }

    /** Takes its time to record, as a real one does. */
    static class Slow extends PassingBench {
        Slow(Bench bench) {
            super(bench);
        }

        @Override
        public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
            pass(seconds);
            return super.acquire(seconds);
        }

        void pass(double seconds) throws InterruptedException {
            NEVER.await((long) (seconds * 1e9), TimeUnit.NANOSECONDS);
        }
    }

    static class SlowButGood extends Odd {
        @Override
        Bench odd(PracticeBench good, Settings settings) {
            return new Slow(good);
        }
    }

    @Test
    void aSlowBenchPasses() {
        Verdict.of(SlowButGood.class).passes();
    }

    static class WaitsToStandDown extends Odd {
        @Override
        Bench odd(PracticeBench good, Settings settings) {
            return new Slow(good) {
                @Override
                public synchronized Acquisition acquire(double seconds)
                        throws MeasurementException, InterruptedException {
                    return super.acquire(seconds);
                }

                @Override
                public synchronized void standDown() throws MeasurementException {
                    super.standDown();
                }
            };
        }
    }

    @Test
    void standingDownThatWaitsForARecording() {
        Verdict.of(WaitsToStandDown.class).fails("standsDownAtOnceFromAnyThread", "did not end in time");
    }

    static class GoesOnFeeding extends Odd {
        @Override
        Bench odd(PracticeBench good, Settings settings) {
            return new PassingBench(good) {
                @Override
                public void standDown() {
                    // It forgets to.
                }
            };
        }
    }

    @Test
    void aToneAfterItStoodDown() {
        Verdict.of(GoesOnFeeding.class).fails("standsDownAtOnceFromAnyThread", "after it stood down");
    }

    static class FeedsAgainUnasked extends Odd {
        @Override
        Bench odd(PracticeBench good, Settings settings) {
            return new PassingBench(good) {
                @Override
                public void feed(Feed feed) throws MeasurementException, InterruptedException {
                    if (!(feed instanceof Feed.Silence)) {
                        super.setSupplyVolts(14.4);
                    }
                    super.feed(feed);
                }
            };
        }
    }

    @Test
    void aToneBeforeTheSupplyIsSetAnew() {
        Verdict.of(FeedsAgainUnasked.class)
                .fails("standsDownAtOnceFromAnyThread", "though the supply was not set anew");
    }

    static class StaysSafe extends Odd {
        @Override
        Bench odd(PracticeBench good, Settings settings) {
            return new PassingBench(good) {
                private volatile boolean safe;

                @Override
                public void standDown() throws MeasurementException {
                    safe = true;
                    super.standDown();
                }

                @Override
                public void feed(Feed feed) throws MeasurementException, InterruptedException {
                    super.feed(safe ? new Feed.Silence() : feed);
                }
            };
        }
    }

    @Test
    void silenceThoughTheSupplyWasSetAnew() {
        Verdict.of(StaysSafe.class).fails("standsDownAtOnceFromAnyThread", "feeds nothing though");
    }

    static class CannotBeInterrupted extends Odd {
        @Override
        Bench odd(PracticeBench good, Settings settings) {
            return new Slow(good) {
                private volatile boolean safe;

                @Override
                void pass(double seconds) {
                    long end = System.nanoTime() + (long) (seconds * 1e9);
                    while (System.nanoTime() < end && !safe) {
                        Thread.onSpinWait();
                    }
                    safe = false;
                }

                @Override
                public void standDown() throws MeasurementException {
                    safe = true;
                    super.standDown();
                }
            };
        }
    }

    @Test
    void aRecordingThatAnInterruptDoesNotEnd() {
        Verdict.of(CannotBeInterrupted.class).fails("endsARecordingWhenItIsInterrupted", "did not end in time");
    }

    static class ClosesOnce extends Odd {
        @Override
        Bench odd(PracticeBench good, Settings settings) {
            return new PassingBench(good) {
                private int closed;

                @Override
                public void close() throws MeasurementException {
                    closed++;
                    if (closed == 2) {
                        throw new IllegalStateException("closed already");
                    }
                    super.close();
                }
            };
        }
    }

    @Test
    void aSecondCloseThatFails() {
        Verdict.of(ClosesOnce.class).fails("closesTwice", "closed already");
    }

    static class ShowsMetersForEver extends Odd {
        @Override
        Bench odd(PracticeBench good, Settings settings) {
            return new PassingBench(good) {
                private Observation last;

                @Override
                public Observation observe() throws MeasurementException, InterruptedException {
                    try {
                        last = super.observe();
                        return last;
                    } catch (MeasurementException closed) {
                        if (last == null) {
                            throw closed;
                        }
                        return last;
                    }
                }

                @Override
                public void setSupplyVolts(double supplyVolts) throws MeasurementException, InterruptedException {
                    super.setSupplyVolts(supplyVolts);
                    last = super.observe();
                }
            };
        }
    }

    @Test
    void aBenchThatAnswersOnceClosed() {
        Verdict.of(ShowsMetersForEver.class).fails("doesNothingOnceClosed", "It was closed");
    }

    static class LeavesAThread extends Odd {
        @Override
        Bench odd(PracticeBench good, Settings settings) {
            Thread left = new Thread(
                    () -> {
                        try {
                            NEVER.await();
                        } catch (InterruptedException told) {
                            Thread.currentThread().interrupt();
                        }
                    },
                    "poller");
            left.setDaemon(true);
            left.start();
            return good;
        }
    }

    @Test
    void aThreadThatOutlivesTheBench() {
        Verdict.of(LeavesAThread.class).fails("leavesNoThreadBehind", "poller");
    }
}
