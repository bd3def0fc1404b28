// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.SoundObservation;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.testkit.internal.PassingBench;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.Waveform;

/** A good driver passes its contract, and each that breaks one point of it fails in that point alone. */
class BenchDriverContractTest {
    /** A driver whose bench is a good one but for what a test overrides. */
    abstract static class Odd extends BenchDriverContract {
        abstract Bench odd(PracticeBench good, Settings settings) throws MeasurementException;

        List<Setting> allSettings() {
            return List.of();
        }

        String version() {
            return "1.0.0";
        }

        @Override
        protected BenchDriver driver() {
            return new BenchDriver() {
                @Override
                public DriverInfo info() {
                    return new DriverInfo(
                            "org.example.odd", version(), "Odd", "Odd.", DriverInfo.Kind.SIMULATED, allSettings());
                }

                @Override
                public Bench open(Subject subject, Settings settings) throws MeasurementException {
                    return odd(new PracticeBench(subject), settings);
                }
            };
        }

        @Override
        protected Duration grace() {
            return Duration.ofMillis(300);
        }

        @Override
        protected double recordSeconds() {
            return 0.02;
        }

        @Override
        protected double longRecordSeconds() {
            return 1;
        }
    }

    static class Good extends BenchDriverContract {
        @Override
        protected BenchDriver driver() {
            return new PracticeDriver();
        }
    }

    @Test
    void aGoodOnePasses() {
        Verdict.of(Good.class).passes();
    }

    /** Feeds tones and records them, on a supply and with a load that a person has set. */
    static class ByHand extends Odd {
        @Override
        Bench odd(PracticeBench good, Settings settings) throws MeasurementException {
            try {
                good.setSupplyVolts(14.4);
            } catch (InterruptedException told) {
                Thread.currentThread().interrupt();
            }
            return new ByHandBench(good);
        }
    }

    static class ByHandBench extends PassingBench {
        ByHandBench(Bench bench) {
            super(bench);
        }

        @Override
        public Set<Ability> abilities() {
            return Set.of(Ability.TONE, Ability.WAVEFORM);
        }

        @Override
        public void connect(Mode mode, BenchLoad load) throws MeasurementException, InterruptedException {
            throw new MeasurementException("A person connects the load.");
        }

        @Override
        public void setSupplyVolts(double supplyVolts) throws MeasurementException, InterruptedException {
            throw new MeasurementException("A person sets the supply.");
        }

        @Override
        public void feed(Feed feed) throws MeasurementException, InterruptedException {
            if (feed instanceof Feed.Burst
                    || feed instanceof Feed.Tone tone && tone.channel().isPresent()) {
                throw new MeasurementException("This bench feeds tones into all channels.");
            }
            super.feed(feed);
        }

        @Override
        public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
            Acquisition all = super.acquire(seconds);
            return new Acquisition(all.output(), Optional.empty(), all.voltsPerFullScale(), none(all.during()));
        }

        @Override
        public Observation observe() throws MeasurementException, InterruptedException {
            return none(super.observe());
        }

        @Override
        public SoundObservation observeSound(FrequencyWeighting weighting, String position, double seconds)
                throws MeasurementException {
            throw new MeasurementException("This bench has no microphone.");
        }

        private static Observation none(Observation all) {
            OptionalDouble none = OptionalDouble.empty();
            return new Observation(all.at(), none, none, none, none);
        }
    }

    @Test
    void aGoodOneWithFewAbilitiesPasses() {
        Verdict.of(ByHand.class).passes();
    }

    static class OtherVersionEveryTime extends Odd {
        private final AtomicInteger asked = new AtomicInteger();

        @Override
        String version() {
            return "1.0." + asked.incrementAndGet();
        }

        @Override
        Bench odd(PracticeBench good, Settings settings) {
            return good;
        }
    }

    @Test
    void informationThatChanges() {
        Verdict.of(OtherVersionEveryTime.class).fails("saysAlwaysTheSameOfItself", "changed from one call to the next");
    }

    static class FailsAtPortZero extends Odd {
        @Override
        List<Setting> allSettings() {
            return List.of(new Setting.Count("port", "port", "Where it listens.", 5025, 0, 65_535));
        }

        @Override
        Bench odd(PracticeBench good, Settings settings) {
            if (settings.count("port") == 0) {
                throw new IllegalArgumentException("port is 0");
            }
            return good;
        }
    }

    @Test
    void aValueInRangeThatItFailsAt() {
        Verdict.of(FailsAtPortZero.class).fails("acceptsEverySettingWithinItsRange", "With port = 0");
    }

    static class LosesAnAbility extends Odd {
        @Override
        Bench odd(PracticeBench good, Settings settings) {
            return new PassingBench(good) {
                private Set<Ability> left = good.abilities();

                @Override
                public Set<Ability> abilities() {
                    return left;
                }

                @Override
                public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
                    left = Set.copyOf(left.stream()
                            .filter(each -> each != Ability.TONE_BURST)
                            .toList());
                    return super.acquire(seconds);
                }
            };
        }
    }

    @Test
    void abilitiesThatChange() {
        Verdict.of(LosesAnAbility.class).fails("keepsItsAbilities", "abilities changed");
    }

    static class HasNoThermometer extends Odd {
        @Override
        Bench odd(PracticeBench good, Settings settings) {
            return new PassingBench(good) {
                @Override
                public Observation observe() throws MeasurementException, InterruptedException {
                    Observation all = super.observe();
                    return new Observation(
                            all.at(),
                            all.supplyVolts(),
                            all.supplyAmps(),
                            OptionalDouble.empty(),
                            all.ambientCelsius());
                }
            };
        }
    }

    @Test
    void anAbilityThatItDoesNotHave() {
        Verdict.of(HasNoThermometer.class).fails("doesWhatItCan", Ability.CASE_CELSIUS.words());
    }

    static class FeedsBurstsUnsaid extends Odd {
        @Override
        Bench odd(PracticeBench good, Settings settings) {
            return new PassingBench(good) {
                @Override
                public Set<Ability> abilities() {
                    Set<Ability> fewer = super.abilities();
                    fewer.remove(Ability.TONE_BURST);
                    return fewer;
                }
            };
        }
    }

    @Test
    void anAbilityThatItDoesNotName() {
        Verdict.of(FeedsBurstsUnsaid.class).fails("refusesWhatItCannotDo", Ability.TONE_BURST.words());
    }

    static class RecordsTooLittle extends Odd {
        @Override
        Bench odd(PracticeBench good, Settings settings) {
            return new PassingBench(good) {
                @Override
                public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
                    return super.acquire(seconds / 2);
                }
            };
        }
    }

    @Test
    void aRecordingThatIsTooShort() {
        Verdict.of(RecordsTooLittle.class).fails("recordsAsLongAsItIsAsked", "Asked for 0.02 s");
    }

    static class RecordsMillivolts extends Odd {
        @Override
        Bench odd(PracticeBench good, Settings settings) {
            return new PassingBench(good) {
                @Override
                public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
                    Acquisition all = super.acquire(seconds);
                    List<Waveform> channels = new ArrayList<>();
                    for (Waveform channel : all.output().channels()) {
                        double[] thousandfold = channel.toArray();
                        for (int i = 0; i < thousandfold.length; i++) {
                            thousandfold[i] *= 1000;
                        }
                        channels.add(Waveform.of(channel.sampleRateHz(), thousandfold));
                    }
                    return new Acquisition(
                            new Capture(channels, "", ""), all.input(), all.voltsPerFullScale(), all.during());
                }
            };
        }
    }

    @Test
    void millivoltsInPlaceOfVolts() {
        Verdict.of(RecordsMillivolts.class).fails("recordsVolts", "of the range");
    }

    static class TakesTheLevelForARatio extends Odd {
        @Override
        Bench odd(PracticeBench good, Settings settings) {
            return new PassingBench(good) {
                @Override
                public void feed(Feed feed) throws MeasurementException, InterruptedException {
                    super.feed(
                            feed instanceof Feed.Tone tone
                                    ? new Feed.Tone(tone.frequencyHz(), tone.driveDb() / 2, tone.channel())
                                    : feed);
                }

                @Override
                public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
                    Acquisition all = super.acquire(seconds);
                    return new Acquisition(all.output(), Optional.empty(), all.voltsPerFullScale(), all.during());
                }

                @Override
                public Set<Ability> abilities() {
                    Set<Ability> fewer = super.abilities();
                    fewer.remove(Ability.INPUT_WAVEFORM);
                    return fewer;
                }
            };
        }
    }

    @Test
    void levelsThatAreNoDecibels() {
        Verdict.of(TakesTheLevelForARatio.class).fails("recordsVolts", "6 dB more");
    }

    static class InKelvin extends Odd {
        @Override
        Bench odd(PracticeBench good, Settings settings) {
            return new PassingBench(good) {
                @Override
                public Observation observe() throws MeasurementException, InterruptedException {
                    Observation all = super.observe();
                    double caseKelvin = all.caseCelsius().getAsDouble() + 273.15;
                    return new Observation(
                            all.at(),
                            all.supplyVolts(),
                            all.supplyAmps(),
                            OptionalDouble.of(caseKelvin),
                            all.ambientCelsius());
                }
            };
        }
    }

    @Test
    void kelvinInPlaceOfCelsius() {
        Verdict.of(InKelvin.class).fails("metersShowTheirUnits", "degrees of the case");
    }
}
