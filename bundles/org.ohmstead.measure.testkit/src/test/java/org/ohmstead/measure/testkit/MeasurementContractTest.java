// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit;

import java.time.Duration;
import java.util.OptionalDouble;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Progress;
import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.units.Unit;

/** A good measurement passes its contract, and each that breaks one point of it fails in that point alone. */
class MeasurementContractTest {
    private static final CountDownLatch NEVER = new CountDownLatch(1);

    @Test
    void aGoodOnePasses() {
        Verdict.of(GoodMeasurementContract.class).passes();
    }

    static class OtherVersionEveryTime extends GoodMeasurementContract {
        private final AtomicInteger asked = new AtomicInteger();

        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                @Override
                public MeasurementInfo info() {
                    return info("1.0." + asked.incrementAndGet(), super.info().needs(), Duration.ofMinutes(1));
                }
            };
        }
    }

    @Test
    void informationThatChanges() {
        Verdict.of(OtherVersionEveryTime.class).fails("saysAlwaysTheSameOfItself", "changed from one call to the next");
    }

    static class NoResult extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                @Override
                MeasurementResult result(double[] peaks) {
                    return null;
                }
            };
        }
    }

    static class Throws extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                @Override
                public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
                        throws MeasurementException {
                    throw new MeasurementException("It cannot be measured. Measure something else.");
                }
            };
        }
    }

    @Test
    void aMeasurementThatCannot() {
        Verdict.of(Throws.class).fails("givesAResult", "It cannot be measured");
    }

    @Test
    void nullInPlaceOfAResult() {
        Verdict.of(NoResult.class).failsWith("gave null", "givesAResult", "acceptsEverySettingWithinItsRange");
    }

    static class DividesByZeroAtTheEdge extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                @Override
                MeasurementResult atEnd(double[] peaks, int times, Bench bench)
                        throws MeasurementException, InterruptedException {
                    int parts = times - 1;
                    return 100 / parts > 0 ? super.atEnd(peaks, times, bench) : null;
                }
            };
        }
    }

    @Test
    void aValueInRangeThatItFailsAt() {
        Verdict.of(DividesByZeroAtTheEdge.class).fails("acceptsEverySettingWithinItsRange", "With times = 1");
    }

    static class NeedsAMeterToAnswer extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                @Override
                public Readiness readiness(Subject subject) {
                    subject.project()
                            .bench()
                            .meterFor(MeterQuantity.SUPPLY_VOLTS)
                            .orElseThrow();
                    return new Readiness.Ready();
                }
            };
        }
    }

    @Test
    void readinessThatThrows() {
        Verdict.of(NeedsAMeterToAnswer.class).fails("readinessIsAnAnswer", "NoSuchElementException");
    }

    static class AnswersNever extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                @Override
                public Readiness readiness(Subject subject) {
                    try {
                        NEVER.await();
                    } catch (InterruptedException told) {
                        Thread.currentThread().interrupt();
                    }
                    return new Readiness.Ready();
                }
            };
        }
    }

    @Test
    void readinessThatWaits() {
        Verdict.of(AnswersNever.class).fails("readinessIsAnAnswer", "did not end in time");
    }

    static class GivesMore extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                @Override
                Figure figure(double peakVolts) {
                    return new Figure("crest", "", "", peakVolts, Unit.VOLT, OptionalDouble.empty());
                }
            };
        }
    }

    @Test
    void aFigureThatWasNotAnnounced() {
        Verdict.of(GivesMore.class).fails("givesOnlyFiguresThatItAnnounces", "\"crest\" was not announced");
    }

    static class WithoutChannels extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                @Override
                MeasurementResult result(double[] peaks) {
                    return MeasurementResult.of(figure(peaks[0]));
                }
            };
        }
    }

    @Test
    void aFigureThatDoesNotSayItsChannel() {
        Verdict.of(WithoutChannels.class).fails("givesOnlyFiguresThatItAnnounces", "for which channel");
    }

    static class InDecibels extends GoodMeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PeakMeasurement() {
                @Override
                Figure figure(double peakVolts) {
                    return new Figure("peak", "", "", 20 * Math.log10(peakVolts), Unit.DECIBEL, OptionalDouble.empty());
                }
            };
        }
    }

    @Test
    void aFigureInAnotherUnit() {
        Verdict.of(InDecibels.class).fails("givesFiguresInTheUnitsThatItAnnounces", "announced in \"V\"");
    }
}
