// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit;

import java.time.Duration;
import java.util.EnumSet;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Progress;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;

/** What a measurement may do wrong while it runs: each fails in that point alone. */
class MeasurementRunContractTest {
    private static final CountDownLatch NEVER = new CountDownLatch(1);

    static class RemembersTheHighest extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                private double highestVolts;

                @Override
                synchronized Figure figure(double peakVolts) {
                    highestVolts = Math.max(highestVolts, peakVolts);
                    return super.figure(highestVolts);
                }
            };
        }
    }

    @Test
    void aMeasurementThatKeepsSomethingForTheNextRun() {
        Verdict.of(RemembersTheHighest.class).fails("keepsNothingBetweenRuns", "third run");
    }

    static class SharesAField extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                private volatile double[] found = new double[2];

                @Override
                MeasurementResult atEnd(double[] peaks, int times, Bench bench)
                        throws MeasurementException, InterruptedException {
                    found = peaks;
                    bench.feed(new Feed.Silence());
                    bench.observe();
                    return result(found);
                }

                @Override
                public MeasurementInfo info() {
                    return info(
                            "1.0.0",
                            Set.of(Ability.TONE, Ability.WAVEFORM, Ability.SUPPLY_VOLTS),
                            Duration.ofMinutes(1));
                }
            };
        }
    }

    @Test
    void twoRunsAtOnceThatShareAField() {
        Verdict.of(SharesAField.class).fails("keepsNothingBetweenRuns", "Two runs at once");
    }

    static class GoesOnWhenTold extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                @Override
                public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
                        throws MeasurementException {
                    try {
                        return super.run(subject, settings, bench, progress);
                    } catch (InterruptedException told) {
                        return result(new double[] {1, 1});
                    }
                }
            };
        }
    }

    @Test
    void aResultThoughItWasToldToEnd() {
        Verdict.of(GoesOnWhenTold.class).fails("endsWhenItIsTold", "let the InterruptedException through");
    }

    static class DoesNotEnd extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                @Override
                public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
                        throws MeasurementException, InterruptedException {
                    try {
                        return super.run(subject, settings, bench, progress);
                    } catch (InterruptedException told) {
                        NEVER.await();
                        throw told;
                    }
                }
            };
        }
    }

    @Test
    void aMeasurementThatDoesNotEndWhenTold() {
        Verdict.of(DoesNotEnd.class).fails("endsWhenItIsTold", "did not end in time");
    }

    static class SaysASecond extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                @Override
                public MeasurementInfo info() {
                    return info("1.0.0", super.info().needs(), Duration.ofSeconds(1));
                }
            };
        }
    }

    @Test
    void aLongestTimeThatIsTooShort() {
        Verdict.of(SaysASecond.class).fails("endsWithinItsLongestTime", "longest is 1.0 s");
    }

    static class NeverAsks extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                @Override
                void checkpoint(Progress progress, int time, int times) {
                    progress.at(time / (double) times, "recording");
                }
            };
        }
    }

    @Test
    void aMeasurementWithoutCheckpoints() {
        Verdict.of(NeverAsks.class).fails("asksOftenWhetherItMayGoOn", "Call it at least once");
    }

    static class InPercent extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                @Override
                void checkpoint(Progress progress, int time, int times) throws InterruptedException {
                    progress.checkpoint();
                    progress.at(100.0 * time / times, "recording");
                }
            };
        }
    }

    @Test
    void progressInPercent() {
        Verdict.of(InPercent.class).fails("saysHowFarItIs", "between 0 and 1");
    }

    static class LeavesTheToneOn extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                @Override
                MeasurementResult atEnd(double[] peaks, int times, Bench bench) {
                    return result(peaks);
                }
            };
        }
    }

    @Test
    void aToneThatIsStillFed() {
        Verdict.of(LeavesTheToneOn.class).fails("leavesTheFeedSilent", "still fed");
    }

    static class FeedsOneChannel extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                @Override
                MeasurementResult atEnd(double[] peaks, int times, Bench bench)
                        throws MeasurementException, InterruptedException {
                    bench.feed(new Feed.Tone(1000, -20, OptionalInt.of(1)));
                    return super.atEnd(peaks, times, bench);
                }
            };
        }
    }

    @Test
    void anAbilityThatItDoesNotSayItNeeds() {
        Verdict.of(FeedsOneChannel.class).fails("usesOnlyWhatItNeeds", Ability.SINGLE_CHANNEL.words());
    }

    static class ReadsAMeter extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                @Override
                MeasurementResult atEnd(double[] peaks, int times, Bench bench)
                        throws MeasurementException, InterruptedException {
                    bench.observe().supplyAmps().orElseThrow();
                    return super.atEnd(peaks, times, bench);
                }

                @Override
                public MeasurementInfo info() {
                    return info(
                            "1.0.0",
                            EnumSet.of(Ability.TONE, Ability.WAVEFORM, Ability.SUPPLY_VOLTS),
                            Duration.ofMinutes(1));
                }
            };
        }
    }

    @Test
    void aMeterThatItDoesNotSayItNeeds() {
        Verdict.of(ReadsAMeter.class).fails("usesOnlyWhatItNeeds", "NoSuchElementException");
    }

    static class LeavesAThread extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                @Override
                MeasurementResult result(double[] peaks) {
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
                    return super.result(peaks);
                }
            };
        }
    }

    @Test
    void aThreadThatOutlivesTheRun() {
        Verdict.of(LeavesAThread.class).fails("leavesNoThreadBehind", "poller");
    }
}
