// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.text.DecimalFormatSymbols;
import java.time.Clock;
import java.util.EnumSet;
import java.util.OptionalDouble;
import java.util.Set;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.SoundObservation;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.bench.OperatorPort;
import org.ohmstead.measure.bench.OperatorPort.Question;
import org.ohmstead.measure.bench.TypedBenchDriver;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Range;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

/** A bench whose hands and eyes are a person's. A simulated bench of the same project goes along and says what is plausible. */
public final class TypedBench implements Bench {
    private static final Messages TEXTS = Messages.of(TypedBench.class);

    private static final double HIGHEST_SUPPLY_VOLTS = 60;
    private static final double HIGHEST_AMPS = 2000;
    private static final Range POSSIBLE_DB = new Range(-10, 190);
    private static final Range LIKELY_DB = new Range(25, 150);
    private static final int DIGITS = 5;
    private static final int MOST_TRIES = 5;

    private final OperatorPort operator;
    private final Clock clock;
    private final TypedForecast forecast;
    private final TypedOutput output;
    private final String outputBy;
    private final boolean readsAmps;
    private final boolean readsCase;
    private final boolean readsSound;
    private Feed feed = new Feed.Silence();
    private boolean supplySet;
    private volatile boolean stoodDown;

    /** Opens a bench for a person. */
    public TypedBench(Subject subject, Settings settings, OperatorPort operator, Clock clock) {
        this.operator = operator;
        this.clock = clock;
        this.forecast = new TypedForecast(subject, clock.instant());
        this.outputBy = settings.choice("output");
        this.output = new TypedOutput(subject, operator, this::asked);
        this.readsAmps = settings.flag("supplyAmps");
        this.readsCase = settings.flag("caseCelsius");
        this.readsSound = settings.flag("soundLevel");
    }

    @Override
    public Set<Ability> abilities() {
        Set<Ability> abilities = EnumSet.of(
                Ability.TONE,
                Ability.TONE_BURST,
                Ability.SINGLE_CHANNEL,
                Ability.SET_SUPPLY_VOLTS,
                Ability.SELECT_LOAD,
                Ability.SUPPLY_VOLTS);
        if (!outputBy.equals(TypedBenchDriver.NOTHING)) {
            abilities.add(Ability.WAVEFORM);
        }
        if (outputBy.equals(TypedBenchDriver.VOLTS_AND_DISTORTION)) {
            abilities.remove(Ability.TONE_BURST);
        }
        if (readsAmps) {
            abilities.add(Ability.SUPPLY_AMPS);
        }
        if (readsCase) {
            abilities.add(Ability.CASE_CELSIUS);
        }
        if (readsSound) {
            abilities.add(Ability.SOUND_LEVEL);
        }
        return abilities;
    }

    @Override
    public void connect(Mode mode, BenchLoad load) throws MeasurementException, InterruptedException {
        silence();
        instruct(
                TEXTS.text("ask.connect", load.id(), plain(load.nominalOhms()), TEXTS.text("ask.mode." + mode.name())));
        forecast.connect(mode, load);
    }

    @Override
    public void setSupplyVolts(double supplyVolts) throws MeasurementException, InterruptedException {
        stoodDown = false;
        instruct(TEXTS.text("ask.supply", fixed("%.2f", supplyVolts)));
        supplySet = true;
        forecast.setSupplyVolts(supplyVolts);
    }

    @Override
    public void feed(Feed newFeed) throws MeasurementException, InterruptedException {
        if (newFeed instanceof Feed.Silence) {
            silence();
            return;
        }
        if (stoodDown || !supplySet) {
            throw Faults.of("madeSafe");
        }
        instruct(words(newFeed));
        feed = newFeed;
        forecast.feed(newFeed);
    }

    private void silence() throws MeasurementException, InterruptedException {
        if (!(feed instanceof Feed.Silence)) {
            instruct(TEXTS.text("ask.silence"));
        }
        feed = new Feed.Silence();
        forecast.feed(feed);
    }

    private static String words(Feed feed) {
        if (feed instanceof Feed.Burst burst) {
            return TEXTS.text(
                    "ask.burst",
                    plain(burst.frequencyHz()),
                    plain(burst.onSeconds()),
                    fixed("%.2f", burst.driveDb()),
                    plain(burst.periodSeconds()),
                    fixed("%.1f", burst.lowLevelDb()));
        }
        Feed.Tone tone = (Feed.Tone) feed;
        String frequency = plain(tone.frequencyHz());
        String drive = fixed("%.2f", tone.driveDb());
        return tone.channel().isPresent()
                ? TEXTS.text(
                        "ask.tone.one",
                        frequency,
                        drive,
                        channelName(tone.channel().getAsInt()))
                : TEXTS.text("ask.tone.all", frequency, drive);
    }

    static String channelName(int channel) {
        return String.valueOf((char) ('A' + channel));
    }

    private static String fixed(String format, double value) {
        return String.format(TEXTS.locale(), format, value);
    }

    static String plain(double value) {
        return new BigDecimal(value)
                .round(new MathContext(DIGITS))
                .stripTrailingZeros()
                .toPlainString()
                .replace('.', DecimalFormatSymbols.getInstance(TEXTS.locale()).getDecimalSeparator());
    }

    private void instruct(String sentences) throws MeasurementException, InterruptedException {
        if (!operator.confirm(sentences)) {
            throw cancelled();
        }
    }

    static MeasurementException cancelled() {
        return Faults.of("cancelled");
    }

    @Override
    public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
        if (stoodDown) {
            throw Faults.of("madeSafe.record");
        }
        if (outputBy.equals(TypedBenchDriver.NOTHING)) {
            throw Faults.of("noOutput");
        }
        TypedOutput.Handed handed = outputBy.equals(TypedBenchDriver.CAPTURE_FILES)
                ? output.fromFile(seconds)
                : output.fromReadings(feed, seconds, forecast);
        return Acquisition.of(handed.capture(), handed.voltsPerFullScale(), observe());
    }

    @Override
    public Observation observe() throws MeasurementException, InterruptedException {
        Observation expected = forecast.observe();
        double volts = expected.supplyVolts().orElseThrow();
        double shownVolts = asked(
                Said.of(TEXTS, "value.supplyVolts"),
                Unit.VOLT,
                new Range(0, HIGHEST_SUPPLY_VOLTS),
                new Range(0.9 * volts, 1.07 * volts));
        OptionalDouble amps = OptionalDouble.empty();
        if (readsAmps) {
            double likely = expected.supplyAmps().orElseThrow();
            amps = OptionalDouble.of(asked(
                    Said.of(TEXTS, "value.supplyAmps"),
                    Unit.AMPERE,
                    new Range(0, HIGHEST_AMPS),
                    new Range(0.4 * likely, Math.min(HIGHEST_AMPS, 2 * likely + 1))));
        }
        OptionalDouble hot = OptionalDouble.empty();
        if (readsCase) {
            double air = expected.ambientCelsius().orElseThrow();
            hot = OptionalDouble.of(asked(
                    Said.of(TEXTS, "value.caseCelsius"),
                    Unit.CELSIUS,
                    new Range(-40, 200),
                    new Range(air - 10, air + 75)));
        }
        return new Observation(clock.instant(), OptionalDouble.of(shownVolts), amps, hot, OptionalDouble.empty());
    }

    @Override
    public SoundObservation observeSound(FrequencyWeighting weighting, String position, double seconds)
            throws MeasurementException, InterruptedException {
        if (stoodDown) {
            throw Faults.of("madeSafe.hear");
        }
        if (!readsSound) {
            throw Faults.of("noSoundMeter");
        }
        double levelDb = asked(
                Said.of(() -> TEXTS.text(
                        position.isBlank() ? "value.soundLevel" : "value.soundLevel.at",
                        weighting.name(),
                        plain(seconds),
                        position.strip())),
                Unit.DECIBEL,
                POSSIBLE_DB,
                LIKELY_DB);
        return new SoundObservation(clock.instant(), levelDb, weighting, OptionalDouble.empty());
    }

    /** Asks until the answer is possible, and plausible or insisted on. */
    private double asked(Said what, Unit unit, Range possible, Range likely)
            throws MeasurementException, InterruptedException {
        Question question = Question.of(what.shown(), unit, possible, likely);
        for (int i = 0; i < MOST_TRIES; i++) {
            OptionalDouble answer = operator.ask(question);
            if (answer.isEmpty()) {
                throw cancelled();
            }
            double value = answer.getAsDouble();
            if (!question.isPossible(value)) {
                operator.warn(about("value.impossible", question, value, question.possible()));
            } else if (question.isLikely(value)
                    || operator.confirm(about("value.unlikely", question, value, question.likely()))) {
                return value;
            }
        }
        throw Faults.of("noValue", what);
    }

    private static String about(String key, Question question, double value, Range range) {
        return TEXTS.text(
                key,
                question.what(),
                plain(value),
                plain(range.low()),
                plain(range.high()),
                question.unit().symbol());
    }

    @Override
    public void standDown() {
        if (!stoodDown) {
            stoodDown = true;
            operator.warn(TEXTS.text("ask.standDown"));
        }
    }

    @Override
    public void close() {
        standDown();
        forecast.close();
    }
}
