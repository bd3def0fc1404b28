// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Clock;
import java.util.EnumSet;
import java.util.Locale;
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

/** A bench whose hands and eyes are a person's. A simulated bench of the same project goes along and says what is plausible. */
public final class TypedBench implements Bench {
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
        instruct("Connect the load \"" + load.id() + "\" (" + plain(load.nominalOhms()) + " ohm), "
                + mode.name().toLowerCase(Locale.ROOT) + ".");
        forecast.connect(mode, load);
    }

    @Override
    public void setSupplyVolts(double supplyVolts) throws MeasurementException, InterruptedException {
        stoodDown = false;
        instruct(String.format(Locale.ROOT, "Set the supply to %.2f V at the amplifier's terminals.", supplyVolts));
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
            throw new MeasurementException(
                    "The bench was made safe, so nothing is fed. Set the supply volts again before you go on.");
        }
        instruct(words(newFeed));
        feed = newFeed;
        forecast.feed(newFeed);
    }

    private void silence() throws MeasurementException, InterruptedException {
        if (!(feed instanceof Feed.Silence)) {
            instruct("Turn the source off.");
        }
        feed = new Feed.Silence();
        forecast.feed(feed);
    }

    private static String words(Feed feed) {
        if (feed instanceof Feed.Burst burst) {
            return String.format(
                    Locale.ROOT,
                    "Feed bursts of %s Hz: %s s long at %.2f dB, every %s s, %.1f dB between them.",
                    plain(burst.frequencyHz()),
                    plain(burst.onSeconds()),
                    burst.driveDb(),
                    plain(burst.periodSeconds()),
                    burst.lowLevelDb());
        }
        Feed.Tone tone = (Feed.Tone) feed;
        String where = tone.channel().isPresent()
                ? "channel " + (char) ('A' + tone.channel().getAsInt()) + " alone"
                : "all channels";
        return String.format(
                Locale.ROOT,
                "Feed a sine of %s Hz at %.2f dB into %s.",
                plain(tone.frequencyHz()),
                tone.driveDb(),
                where);
    }

    private static String plain(double value) {
        return new BigDecimal(value)
                .round(new MathContext(DIGITS))
                .stripTrailingZeros()
                .toPlainString();
    }

    private void instruct(String sentences) throws MeasurementException, InterruptedException {
        if (!operator.confirm(sentences)) {
            throw cancelled();
        }
    }

    static MeasurementException cancelled() {
        return new MeasurementException(
                "The person at the bench cancelled. Start the measurement again when they are ready.");
    }

    @Override
    public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
        if (stoodDown) {
            throw new MeasurementException("The bench was made safe, so there is nothing to record.");
        }
        if (outputBy.equals(TypedBenchDriver.NOTHING)) {
            throw new MeasurementException(
                    "This bench does not record the output. Choose how the output is handed in, in the driver's settings.");
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
        double shownVolts = asked(Question.of(
                "supply volts at the terminals",
                Unit.VOLT,
                new Range(0, HIGHEST_SUPPLY_VOLTS),
                new Range(0.9 * volts, 1.07 * volts)));
        OptionalDouble amps = OptionalDouble.empty();
        if (readsAmps) {
            double likely = expected.supplyAmps().orElseThrow();
            amps = OptionalDouble.of(asked(Question.of(
                    "supply current",
                    Unit.AMPERE,
                    new Range(0, HIGHEST_AMPS),
                    new Range(0.4 * likely, Math.min(HIGHEST_AMPS, 2 * likely + 1)))));
        }
        OptionalDouble hot = OptionalDouble.empty();
        if (readsCase) {
            double air = expected.ambientCelsius().orElseThrow();
            hot = OptionalDouble.of(asked(Question.of(
                    "temperature of the case", Unit.CELSIUS, new Range(-40, 200), new Range(air - 10, air + 75))));
        }
        return new Observation(clock.instant(), OptionalDouble.of(shownVolts), amps, hot, OptionalDouble.empty());
    }

    @Override
    public SoundObservation observeSound(FrequencyWeighting weighting, String position, double seconds)
            throws MeasurementException, InterruptedException {
        if (stoodDown) {
            throw new MeasurementException("The bench was made safe, so there is nothing to hear.");
        }
        if (!readsSound) {
            throw new MeasurementException(
                    "This bench has no sound level meter. Say that there is one in the driver's settings.");
        }
        String where = position.isBlank() ? "" : " at \"" + position.strip() + "\"";
        double levelDb = asked(new Question(
                "sound level" + where + ", " + weighting.name() + "-weighted, averaged over " + plain(seconds) + " s",
                Unit.DECIBEL,
                POSSIBLE_DB,
                LIKELY_DB));
        return new SoundObservation(clock.instant(), levelDb, weighting, OptionalDouble.empty());
    }

    /** Asks until the answer is possible, and plausible or insisted on. */
    private double asked(Question question) throws MeasurementException, InterruptedException {
        for (int i = 0; i < MOST_TRIES; i++) {
            OptionalDouble answer = operator.ask(question);
            if (answer.isEmpty()) {
                throw cancelled();
            }
            double value = answer.getAsDouble();
            String unit = " " + question.unit().symbol();
            if (!question.isPossible(value)) {
                operator.warn("The " + question.what() + " cannot be " + plain(value) + unit + "; it must lie between "
                        + plain(question.possible().low()) + unit + " and "
                        + plain(question.possible().high()) + unit + ".");
            } else if (question.isLikely(value)
                    || operator.confirm("For the " + question.what() + " " + plain(value) + unit
                            + " was given, but the forecast expects "
                            + plain(question.likely().low()) + unit + " to "
                            + plain(question.likely().high()) + unit + ". Is the value right?")) {
                return value;
            }
        }
        throw new MeasurementException(
                "No usable value was given for the " + question.what() + ". Check the instrument, and start again.");
    }

    @Override
    public void standDown() {
        if (!stoodDown) {
            stoodDown = true;
            operator.warn("Turn the source off and switch the supply off now.");
        }
    }

    @Override
    public void close() {
        standDown();
        forecast.close();
    }
}
