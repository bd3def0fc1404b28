// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.SoundObservation;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.Waveform;

/**
 * A bench in memory with every ability: an amplifier that clips at a hard limit, see {@link PracticeAmplifier}. The same calls give the same
 * volts, in no time; its clock goes on by what is recorded. It records at 48 kHz and no longer than {@link #LONGEST_SECONDS} at once.
 */
public final class PracticeBench implements Bench {
    /** The longest recording. */
    public static final double LONGEST_SECONDS = 60;

    /** The loss of one channel's tone at the others' outputs. */
    private static final double CROSSTALK_RATIO = 0.001;

    private static final double SAMPLE_RATE_HZ = 48_000;
    private static final double FULL_SCALE_VOLTS = 100;
    private static final double EFFICIENCY_RATIO = 0.7;
    private static final double IDLE_AMPS = 0.8;
    private static final double AIR_CELSIUS = 23;
    private static final double METER_SECONDS = 0.1;
    private static final double KELVIN_PER_JOULE = 0.001;
    private static final double LOUDSPEAKER_DB = 88;
    private static final double BACKGROUND_DB = 40;
    private static final Instant START = Instant.parse("2026-01-15T12:00:00Z");

    private final Subject subject;
    private final PracticeAmplifier amplifier;
    private final Random random = new Random(1);
    private Mode mode;
    private BenchLoad load;
    private double supplyVolts;
    private double caseCelsius = AIR_CELSIUS;
    private long samplesSoFar;
    private volatile Feed feed = new Feed.Silence();
    private volatile boolean safe = true;
    private volatile boolean closed;

    /** Opens a bench with the usual amplifier. */
    public PracticeBench(Subject subject) {
        this(subject, PracticeAmplifier.usual());
    }

    /** Opens a bench with an amplifier; the step's load is connected, and the supply is off. */
    public PracticeBench(Subject subject, PracticeAmplifier amplifier) {
        this.subject = subject;
        this.amplifier = amplifier;
        this.mode = subject.step().mode();
        this.load = subject.load();
    }

    @Override
    public Set<Ability> abilities() {
        return EnumSet.allOf(Ability.class);
    }

    @Override
    public void connect(Mode newMode, BenchLoad newLoad) throws MeasurementException, InterruptedException {
        requireOpen();
        feed = new Feed.Silence();
        int channels = outputs(newMode);
        if (newLoad.branches().size() < channels) {
            throw new MeasurementException("The load \"" + newLoad.id() + "\" has not enough resistances for "
                    + channels + " channels. Choose another.");
        }
        mode = newMode;
        load = newLoad;
    }

    @Override
    public void setSupplyVolts(double newSupplyVolts) throws MeasurementException, InterruptedException {
        requireOpen();
        if (!Double.isFinite(newSupplyVolts) || newSupplyVolts <= 0) {
            throw new IllegalArgumentException(
                    "supplyVolts is " + newSupplyVolts + "; it must be a finite number above 0");
        }
        if (safe) {
            feed = new Feed.Silence();
            safe = false;
        }
        supplyVolts = newSupplyVolts;
    }

    @Override
    public void feed(Feed newFeed) throws MeasurementException, InterruptedException {
        requireOpen();
        if (safe && !(newFeed instanceof Feed.Silence)) {
            throw new MeasurementException("The bench was made safe. Set the supply volts before something is fed.");
        }
        feed = newFeed;
    }

    @Override
    public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
        requireOpen();
        if (!Double.isFinite(seconds) || seconds <= 0) {
            throw new IllegalArgumentException("seconds is " + seconds + "; it must be a finite number above 0");
        }
        if (seconds > LONGEST_SECONDS) {
            throw new MeasurementException(
                    "The bench records at most " + LONGEST_SECONDS + " s at once. Choose a shorter recording.");
        }
        int count = (int) Math.ceil(seconds * SAMPLE_RATE_HZ);
        List<double[]> volts = output(count);
        Observation during = shown(volts);
        List<Waveform> output = new ArrayList<>();
        List<Waveform> input = new ArrayList<>();
        for (int channel = 0; channel < volts.size(); channel++) {
            double[] noisy = volts.get(channel);
            for (int i = 0; i < count; i++) {
                noisy[i] += amplifier.noiseVoltsRms() * (safe ? 0 : random.nextGaussian());
            }
            output.add(Waveform.of(SAMPLE_RATE_HZ, noisy));
            input.add(Waveform.of(SAMPLE_RATE_HZ, fed(channel, count)));
        }
        pass(count);
        return new Acquisition(
                new Capture(output, "practice", ""),
                Optional.of(new Capture(input, "practice", "")),
                Collections.nCopies(output.size(), FULL_SCALE_VOLTS),
                during);
    }

    @Override
    public Observation observe() throws MeasurementException, InterruptedException {
        requireOpen();
        int count = (int) (METER_SECONDS * SAMPLE_RATE_HZ);
        Observation shown = shown(output(count));
        pass(count);
        return shown;
    }

    /** Returns the level of loudspeakers of 88 dB for 1 W at 1 m, fed with the mean power of all channels, over a background of 40 dB. */
    @Override
    public SoundObservation observeSound(FrequencyWeighting weighting, String position, double seconds)
            throws MeasurementException, InterruptedException {
        requireOpen();
        if (!Double.isFinite(seconds) || seconds <= 0 || seconds > LONGEST_SECONDS) {
            throw new IllegalArgumentException(
                    "seconds is " + seconds + "; it must be above 0 and at most " + LONGEST_SECONDS);
        }
        int count = (int) Math.ceil(seconds * SAMPLE_RATE_HZ);
        double share = Math.pow(10, LOUDSPEAKER_DB / 10) * watts(output(count));
        Feed now = feed;
        if (now instanceof Feed.Tone tone) {
            share *= Math.pow(weighting.gainRatio(tone.frequencyHz()), 2);
        } else if (now instanceof Feed.Burst burst) {
            share *= Math.pow(weighting.gainRatio(burst.frequencyHz()), 2);
        }
        pass(count);
        return new SoundObservation(
                START.plusNanos((long) (samplesSoFar * 1e9 / SAMPLE_RATE_HZ)),
                10 * Math.log10(share + Math.pow(10, BACKGROUND_DB / 10)),
                weighting,
                OptionalDouble.of(0.2));
    }

    @Override
    public void standDown() {
        safe = true;
        feed = new Feed.Silence();
    }

    @Override
    public void close() {
        standDown();
        closed = true;
    }

    private void requireOpen() throws MeasurementException, InterruptedException {
        if (Thread.interrupted()) {
            throw new InterruptedException("The thread was interrupted.");
        }
        if (closed) {
            throw new MeasurementException("The bench was closed. Open it anew.");
        }
    }

    private int outputs(Mode ofMode) {
        return ofMode == Mode.STEREO ? subject.project().amplifier().channelCount() : 1;
    }

    private List<double[]> output(int count) {
        List<double[]> volts = new ArrayList<>();
        double limitVolts = safe ? 0 : Math.max(0, supplyVolts - amplifier.lossVolts());
        int sides = mode == Mode.BRIDGED ? 2 : 1;
        for (int channel = 0; channel < outputs(mode); channel++) {
            LoadBranch branch = load.branches().get(channel);
            double share = sides * branch.ohms() / (branch.ohms() + sides * amplifier.outputOhms());
            double[] each = fed(channel, count);
            for (int i = 0; i < count; i++) {
                double hum = Math.sqrt(2) * amplifier.humVoltsRms() * sine(amplifier.humHz(), i);
                double wanted = amplifier.gainRatio() * each[i] + hum + amplifier.offsetVolts();
                each[i] = share * Math.max(-limitVolts, Math.min(limitVolts, wanted));
            }
            volts.add(each);
        }
        return volts;
    }

    private double sine(double frequencyHz, int sample) {
        return Math.sin(2 * Math.PI * frequencyHz * (samplesSoFar + sample) / SAMPLE_RATE_HZ);
    }

    private double[] fed(int channel, int count) {
        double[] volts = new double[count];
        Feed now = feed;
        if (now instanceof Feed.Tone tone) {
            boolean meant = tone.channel().isEmpty() || tone.channel().getAsInt() == channel;
            double peakVolts = peakVolts(tone.driveDb()) * (meant ? 1 : CROSSTALK_RATIO);
            for (int i = 0; i < count; i++) {
                volts[i] = peakVolts * sine(tone.frequencyHz(), i);
            }
        } else if (now instanceof Feed.Burst burst) {
            for (int i = 0; i < count; i++) {
                double seconds = (samplesSoFar + i) / SAMPLE_RATE_HZ;
                boolean loud = seconds % burst.periodSeconds() < burst.onSeconds();
                volts[i] = peakVolts(burst.driveDb() + (loud ? 0 : burst.lowLevelDb())) * sine(burst.frequencyHz(), i);
            }
        }
        return volts;
    }

    private double peakVolts(double driveDb) {
        return Math.sqrt(2) * amplifier.sourceVoltsRms() * Math.pow(10, driveDb / 20);
    }

    private double watts(List<double[]> volts) {
        double outputWatts = 0;
        for (int channel = 0; channel < volts.size(); channel++) {
            double squares = 0;
            for (double each : volts.get(channel)) {
                squares += each * each;
            }
            outputWatts += squares
                    / volts.get(channel).length
                    / load.branches().get(channel).ohms();
        }
        return outputWatts;
    }

    private Observation shown(List<double[]> volts) {
        double outputWatts = watts(volts);
        double terminalVolts = safe ? 0 : supplyVolts;
        double amps = safe ? 0 : IDLE_AMPS + outputWatts / EFFICIENCY_RATIO / supplyVolts;
        caseCelsius += KELVIN_PER_JOULE * (terminalVolts * amps - outputWatts) * METER_SECONDS;
        return new Observation(
                START.plusNanos((long) (samplesSoFar * 1e9 / SAMPLE_RATE_HZ)),
                OptionalDouble.of(terminalVolts),
                OptionalDouble.of(amps),
                OptionalDouble.of(caseCelsius),
                OptionalDouble.of(AIR_CELSIUS));
    }

    private void pass(int samples) {
        samplesSoFar += samples;
    }
}
