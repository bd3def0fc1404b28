// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
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
import org.ohmstead.measure.SettingException;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.testkit.internal.BenchCalls;
import org.ohmstead.measure.testkit.internal.BenchTrial;
import org.ohmstead.measure.testkit.internal.Call;
import org.ohmstead.measure.testkit.internal.Ended;
import org.ohmstead.measure.testkit.internal.Loudness;
import org.ohmstead.measure.testkit.internal.Meters;
import org.ohmstead.measure.testkit.internal.SettingEdges;
import org.ohmstead.measure.testkit.internal.Trial;
import org.ohmstead.model.Mode;

/**
 * What every bench driver must keep to. A test of a driver extends this and says which one; behind a driver of instruments stands a
 * program that answers like them, or the instruments themselves with an amplifier that takes {@link #driveDb}.
 */
public abstract class BenchDriverContract {
    private static final Duration LONGEST_WAIT = Duration.ofSeconds(60);
    private static final double LEVEL_TOLERANCE = 0.1;
    private static final double SIX_DB = 20 * Math.log10(2);
    private static final double MOST_OUTPUT_VOLTS = 300;
    private static final double MOST_SUPPLY_AMPS = 2000;
    private static final double LEAST_CELSIUS = -50;
    private static final double MOST_CELSIUS = 200;
    private static final double SAMPLES_PER_CYCLE = 4;
    private static final double MOST_LENGTH_RATIO = 10;
    private static final double MOST_EXTRA_SECONDS = 5;

    /** Returns a new instance. */
    protected abstract BenchDriver driver();

    /** Returns a subject that the bench suits; {@link PracticeSubjects#stereo} unless overridden. */
    protected Subject subject() {
        return PracticeSubjects.stereo();
    }

    /** Returns the settings as text by id, where the defaults do not suit; none unless overridden. */
    protected Map<String, String> settings() {
        return Map.of();
    }

    /** Returns a level at which the amplifier is far from clipping and well above its noise; -40 dB unless overridden. */
    protected double driveDb() {
        return -40;
    }

    /** Returns how long an ordinary recording of the tests is; 0.1 s unless overridden. */
    protected double recordSeconds() {
        return 0.1;
    }

    /** Returns how long a recording is that is stopped under way; 5 s unless overridden. */
    protected double longRecordSeconds() {
        return 5;
    }

    /** Returns how long standing down may take, and a call that was interrupted; the engine waits 3 s, as this does unless overridden. */
    protected Duration grace() {
        return Duration.ofSeconds(3);
    }

    /** Its information is the same at every call, in every instance and once a bench was opened. */
    @Test
    public final void saysAlwaysTheSameOfItself() throws Exception {
        BenchDriver driver = driver();
        DriverInfo before = driver.info();
        assertNotNull(before, "The information is null.");
        assertEquals(before, driver.info(), "The information changed from one call to the next.");
        assertEquals(before, driver().info(), "Another instance gives other information.");
        open(driver).close();
        assertEquals(before, driver.info(), "Opening a bench changed the information.");
    }

    /** Every value that its settings allow, taken at the edges, opens a bench or leads to a sentence that says why there is none. */
    @Test
    public final void acceptsEverySettingWithinItsRange() throws Exception {
        List<Setting> all = driver().info().settings();
        List<String> faults = SettingEdges.faults(all);
        assertTrue(faults.isEmpty(), () -> String.join(" ", faults));
        for (Setting setting : all) {
            for (String value : SettingEdges.within(setting)) {
                Map<String, String> given = new TreeMap<>(settings());
                given.put(setting.id(), value);
                Settings settings = Settings.of(all, given);
                Ended<Boolean> ended = Call.of(LONGEST_WAIT, () -> {
                    driver().open(subject(), settings).close();
                    return true;
                });
                assertTrue(
                        ended.value().isPresent() || ended.threw(MeasurementException.class),
                        "With " + setting.id() + " = " + value + " opening " + ended.words()
                                + "; a value in range opens a bench, or gives a MeasurementException that says what to"
                                + " do.");
            }
        }
    }

    /** Whatever a bench is used for, its abilities stay as they were. */
    @Test
    public final void keepsItsAbilities() throws Exception {
        trial().on(bench -> {
            Set<Ability> before = Set.copyOf(bench.abilities());
            Trial.makeReady(bench, subject());
            bench.feed(new Feed.Silence());
            for (Ability ability : EnumSet.complementOf(EnumSet.of(Ability.CUT_SUPPLY))) {
                if (before.contains(ability)) {
                    calls().use(bench, ability);
                    assertEquals(
                            before,
                            bench.abilities(),
                            "The abilities changed when the bench was to " + ability.words());
                }
            }
            bench.standDown();
            assertEquals(before, bench.abilities(), "The abilities changed when the bench stood down.");
        });
    }

    /** Each ability that it names works. */
    @Test
    public final void doesWhatItCan() throws Exception {
        trial().on(bench -> {
            Trial.makeReady(bench, subject());
            for (Ability ability : bench.abilities()) {
                if (ability == Ability.INPUT_WAVEFORM) {
                    assertTrue(bench.acquire(recordSeconds()).input().isPresent(), "The input is not in a recording.");
                } else if (Meters.isMeter(ability)) {
                    assertTrue(Meters.shown(bench.observe(), ability).isPresent(), "It did not " + ability.words());
                } else if (ability != Ability.CUT_SUPPLY) {
                    calls().use(bench, ability);
                }
            }
        });
    }

    /** A call that it has no ability for ends with a sentence, and what it has no meter for is empty. */
    @Test
    public final void refusesWhatItCannotDo() throws Exception {
        trial().on(bench -> {
            Trial.makeReady(bench, subject());
            Set<Ability> missing = EnumSet.allOf(Ability.class);
            missing.removeAll(bench.abilities());
            missing.removeAll(Set.of(Ability.INPUT_WAVEFORM, Ability.CUT_SUPPLY));
            for (Ability ability : missing) {
                if (Meters.isMeter(ability)) {
                    assertTrue(
                            Meters.shown(bench.observe(), ability).isEmpty(),
                            "It does not say that it can " + ability.words() + ", but it does.");
                } else {
                    BenchTrial.assertRefused(
                            bench, "It does not say that it can " + ability.words(), b -> calls().demand(b, ability));
                }
            }
        });
    }

    /** Recordings are at least as long as asked for, fast enough for the tone, and have the channels of the step. */
    @Test
    public final void recordsAsLongAsItIsAsked() throws Exception {
        trial().onLoud(bench -> {
            for (double seconds : List.of(recordSeconds(), 2 * recordSeconds())) {
                Acquisition acquisition = bench.acquire(seconds);
                double rateHz = acquisition.output().sampleRateHz();
                double lengthSeconds = acquisition.output().size() / rateHz;
                assertTrue(
                        lengthSeconds >= seconds - 1 / rateHz
                                && lengthSeconds <= MOST_LENGTH_RATIO * seconds + MOST_EXTRA_SECONDS,
                        "Asked for " + seconds + " s it recorded " + lengthSeconds + " s.");
                double toneHz = calls().tone().frequencyHz();
                assertTrue(
                        rateHz >= SAMPLES_PER_CYCLE * toneHz,
                        "It records only " + rateHz + " samples per second of a tone of " + toneHz + " Hz.");
                assertEquals(
                        subject().step().mode() == Mode.STEREO ? subject().channelCount() : 1,
                        acquisition.output().channels().size(),
                        "The number of channels recorded is not that of the step.");
            }
        });
    }

    /** The output is in volts: plausible, within the range that it says, and twice as much for 6 dB more. */
    @Test
    public final void recordsVolts() throws Exception {
        trial().onLoud(bench -> {
            Acquisition quiet = bench.acquire(recordSeconds());
            bench.feed(Feed.Tone.of(calls().tone().frequencyHz(), driveDb() + SIX_DB));
            Acquisition loud = bench.acquire(recordSeconds());
            double voltsRms = Loudness.voltsRms(quiet.output());
            assertTrue(
                    voltsRms > 0 && voltsRms < MOST_OUTPUT_VOLTS, "The output of " + voltsRms + " V is not plausible.");
            assertTrue(
                    Loudness.rangeShare(loud) <= 1 + LEVEL_TOLERANCE,
                    "The output is " + Loudness.rangeShare(loud) + " of the range that it was recorded in.");
            double wanted = loud.input().isPresent() && quiet.input().isPresent()
                    ? Loudness.voltsRms(loud.input().get())
                            / Loudness.voltsRms(quiet.input().get())
                    : 2;
            double found = Loudness.voltsRms(loud.output()) / voltsRms;
            assertEquals(wanted, found, LEVEL_TOLERANCE * wanted, "6 dB more at the input are not that at the output.");
        });
    }

    /** Its meters are in volts, amperes and degrees Celsius: what they show is plausible. */
    @Test
    public final void metersShowTheirUnits() throws Exception {
        trial().on(bench -> {
            Trial.makeReady(bench, subject());
            Observation seen = bench.observe();
            double setVolts = subject().step().supplyVolts();
            seen.supplyVolts().ifPresent(volts -> within(volts, setVolts / 2, 2 * setVolts, "supply volts"));
            seen.supplyAmps().ifPresent(amps -> within(amps, -1, MOST_SUPPLY_AMPS, "amperes of supply current"));
            seen.caseCelsius()
                    .ifPresent(celsius -> within(celsius, LEAST_CELSIUS, MOST_CELSIUS, "degrees of the case"));
            seen.ambientCelsius()
                    .ifPresent(celsius -> within(celsius, LEAST_CELSIUS, MOST_CELSIUS, "degrees of the air"));
        });
    }

    private static void within(double value, double least, double most, String what) {
        assertTrue(
                value >= least && value <= most, "The meters show " + value + " " + what + ", which is not plausible.");
    }

    /** Once opened and once a load was connected, nothing is fed until it is asked for. */
    @Test
    public final void isSilentUntilItIsToldToFeed() throws Exception {
        trial().onLoud(bench -> {
            double loud = trial().loudness(bench);
            if (bench.abilities().contains(Ability.SELECT_LOAD)) {
                bench.connect(subject().step().mode(), subject().load());
                trial().assertSilent(bench, loud, "after a load was connected");
            }
            // Instruments are not opened twice at once.
            bench.close();
            try (Bench fresh = open(driver())) {
                Trial.makeReady(fresh, subject());
                trial().assertSilent(fresh, loud, "in a bench that was just opened");
            }
        });
    }

    /** Another thread makes it safe while it records: at once, and for good until the supply is set anew. */
    @Test
    public final void standsDownAtOnceFromAnyThread() throws Exception {
        trial().onLoud(bench -> {
            double loud = trial().loudness(bench);
            Call<Acquisition> recording = BenchTrial.recording(bench, longRecordSeconds());
            Ended<Boolean> stood = Call.of(grace(), () -> {
                bench.standDown();
                return true;
            });
            assertTrue(stood.value().isPresent(), "While it recorded, standing down " + stood.words());
            recording.interrupt();
            assertTrue(recording.await(grace()).inTime(), "The recording went on after it stood down.");
            try {
                bench.feed(calls().tone());
            } catch (MeasurementException refused) {
                assertFalse(refused.getMessage().isBlank(), "The refusal does not say why.");
            }
            trial().assertSilent(bench, loud, "after it stood down, though the supply was not set anew");
            if (bench.abilities().contains(Ability.SET_SUPPLY_VOLTS)) {
                bench.setSupplyVolts(subject().step().supplyVolts());
                bench.feed(calls().tone());
                assertTrue(trial().isLoud(bench, loud), "It feeds nothing though the supply was set anew.");
            }
        });
    }

    /** An interrupt ends a recording soon. */
    @Test
    public final void endsARecordingWhenItIsInterrupted() throws Exception {
        trial().onLoud(bench -> {
            Call<Acquisition> recording = BenchTrial.recording(bench, longRecordSeconds());
            recording.interrupt();
            Ended<Acquisition> ended = recording.await(grace());
            assertTrue(
                    ended.value().isPresent() || ended.threw(InterruptedException.class),
                    "Interrupted while it recorded, it " + ended.words());
        });
    }

    /** A second call of close does nothing. */
    @Test
    public final void closesTwice() throws Exception {
        Ended<Boolean> ended = Call.of(LONGEST_WAIT, () -> {
            Bench bench = open(driver());
            bench.close();
            bench.close();
            return true;
        });
        assertTrue(ended.value().isPresent(), "Closed twice it " + ended.words());
    }

    /** Every call to a bench that was closed is refused with a sentence. */
    @Test
    public final void doesNothingOnceClosed() throws Exception {
        trial().onLoud(bench -> {
            Set<Ability> abilities = Set.copyOf(bench.abilities());
            bench.close();
            for (Ability ability : abilities) {
                if (ability != Ability.CUT_SUPPLY) {
                    BenchTrial.assertRefused(
                            bench, "It was closed, but was asked to " + ability.words(), b -> calls().use(b, ability));
                }
            }
        });
    }

    /** No thread that it opened is there when the bench was closed. */
    @Test
    public final void leavesNoThreadBehind() throws Exception {
        Call<Boolean> call = Call.start(() -> {
            try (Bench bench = open(driver())) {
                Trial.makeReady(bench, subject());
                for (Ability ability : List.of(Ability.TONE, Ability.WAVEFORM)) {
                    if (bench.abilities().contains(ability)) {
                        calls().use(bench, ability);
                    }
                }
            }
            return true;
        });
        Ended<Boolean> ended = call.await(LONGEST_WAIT);
        List<String> left = call.threadsLeft();
        assumeTrue(ended.value().isPresent(), "the bench was not used to its end");
        assertTrue(left.isEmpty(), "Threads outlive the bench: " + left);
    }

    private BenchCalls calls() {
        return new BenchCalls(subject(), driveDb(), recordSeconds());
    }

    private Bench open(BenchDriver driver) throws MeasurementException, InterruptedException {
        try {
            return driver.open(subject(), Settings.of(driver.info().settings(), settings()));
        } catch (SettingException wrong) {
            return fail("The settings of the test do not fit. " + wrong.getMessage());
        }
    }

    private BenchTrial trial() {
        return new BenchTrial(() -> open(driver()), subject(), calls(), recordSeconds());
    }
}
