// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.io.IOException;
import java.time.Clock;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import javax.sound.sampled.AudioFormat;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.SoundObservation;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.bench.SoundLines;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.sound.MicrophoneCalibration;
import org.ohmstead.signal.sound.SoundException;
import org.ohmstead.signal.sound.SoundLevelMeter;
import org.ohmstead.units.text.Said;

/** A sound card as source and recorder, with supply and load set by hand as the step says. */
public final class SoundCardBench implements Bench {
    private static final double LOOP_SECONDS = 2;
    private static final double HIGHEST_SHARE = 0.45;
    private static final double FULL_SHARE = 0.9999;

    private final Subject subject;
    private final AudioFormat format;
    private final SoundLines.Player player;
    private final SoundLines.Taker taker;
    private final Clock clock;
    private final double outputVoltsRms;
    private final double[] voltsPerFullScale;
    private final int microphoneInput;
    private final MicrophoneCalibration microphone;
    private Feed feed = new Feed.Silence();
    private boolean closed;
    private volatile boolean stoodDown;

    /** Takes over two open lines. */
    public SoundCardBench(
            Subject subject,
            Settings settings,
            AudioFormat format,
            SoundLines.Player player,
            SoundLines.Taker taker,
            Clock clock) {
        this.subject = subject;
        this.format = format;
        this.player = player;
        this.taker = taker;
        this.clock = clock;
        this.outputVoltsRms = settings.number("outputVolts");
        this.voltsPerFullScale = new double[format.getChannels()];
        Arrays.fill(voltsPerFullScale, settings.number("voltsPerFullScale") * settings.number("secondShare"));
        voltsPerFullScale[0] = settings.number("voltsPerFullScale");
        this.microphoneInput = settings.count("microphoneInput");
        this.microphone = new MicrophoneCalibration(
                settings.number("pascalsPerFullScale"),
                settings.number("microphoneDb"),
                MicrophoneCalibration.USUAL_LEVEL_DB,
                MicrophoneCalibration.USUAL_FREQUENCY_HZ);
    }

    @Override
    public Set<Ability> abilities() {
        EnumSet<Ability> abilities = EnumSet.of(
                Ability.TONE, Ability.TONE_BURST, Ability.SINGLE_CHANNEL, Ability.WAVEFORM, Ability.INPUT_WAVEFORM);
        if (microphoneInput > 0) {
            abilities.add(Ability.SOUND_LEVEL);
        }
        return abilities;
    }

    @Override
    public void connect(Mode mode, BenchLoad load) throws MeasurementException {
        silence();
        if (mode != subject.step().mode() || !load.id().equals(subject.step().loadId())) {
            throw Faults.of("card.load", load.id());
        }
    }

    /** A person sets the supply; that this is called says that they did. */
    @Override
    public void setSupplyVolts(double supplyVolts) throws MeasurementException {
        if (supplyVolts != subject.step().supplyVolts()) {
            throw Faults.of("card.supply", supplyVolts);
        }
        silence();
        stoodDown = false;
    }

    @Override
    public void feed(Feed newFeed) throws MeasurementException {
        if (newFeed instanceof Feed.Silence) {
            silence();
            return;
        }
        if (stoodDown || closed) {
            throw Faults.of("card.madeSafe");
        }
        double[][] shares = loop(newFeed);
        try {
            player.loop(Frames.of(shares, format));
        } catch (IOException e) {
            player.silence();
            throw Faults.because(e, "card.plays", Said.by(e));
        }
        feed = newFeed;
        if (stoodDown) {
            silence();
        }
    }

    private void silence() {
        player.silence();
        feed = new Feed.Silence();
    }

    /** A piece that can be repeated: whole cycles of a tone, whole periods of bursts; the frequency gives way by parts of a hertz. */
    private double[][] loop(Feed newFeed) throws MeasurementException {
        double rate = format.getSampleRate();
        double frequencyHz =
                newFeed instanceof Feed.Tone tone ? tone.frequencyHz() : ((Feed.Burst) newFeed).frequencyHz();
        if (frequencyHz > HIGHEST_SHARE * rate) {
            throw Faults.of(
                    "card.tooHigh",
                    Said.number("%.0f", HIGHEST_SHARE * rate),
                    Said.number("%.0f", rate),
                    Said.number("%.0f", frequencyHz));
        }
        double seconds = newFeed instanceof Feed.Burst burst ? burst.periodSeconds() : LOOP_SECONDS;
        int size = (int) Math.round(seconds * rate);
        double wholeHz = Math.max(1, Math.rint(frequencyHz * size / rate)) * rate / size;
        Drive drive = Drive.of(atFrequency(newFeed, wholeHz), format.getChannels(), Math.sqrt(0.5));
        double[][] shares = new double[format.getChannels()][size];
        for (int channel = 0; channel < shares.length; channel++) {
            for (int i = 0; i < size; i++) {
                shares[channel][i] = drive.voltsPeak(channel) * drive.shareAt(i / rate, 0);
            }
        }
        return shares;
    }

    private static Feed atFrequency(Feed feed, double frequencyHz) {
        if (feed instanceof Feed.Burst burst) {
            return new Feed.Burst(
                    frequencyHz, burst.driveDb(), burst.onSeconds(), burst.periodSeconds(), burst.lowLevelDb());
        }
        Feed.Tone tone = (Feed.Tone) feed;
        return new Feed.Tone(frequencyHz, tone.driveDb(), tone.channel());
    }

    @Override
    public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
        byte[] frames = frames(seconds);
        int size = frames.length / format.getFrameSize();
        int wanted = subject.channelCount();
        Capture output = new Capture(
                Frames.waveforms(frames, format, wanted, voltsPerFullScale), "sound card", format.toString());
        List<Double> ranges =
                Arrays.stream(voltsPerFullScale).limit(wanted).boxed().toList();
        Drive drive = Drive.of(feed, format.getChannels(), outputVoltsRms);
        Capture input = Recorder.input(drive, wanted, 0, size, format.getSampleRate());
        return new Acquisition(output, Optional.of(input), ranges, observe());
    }

    private byte[] frames(double seconds) throws MeasurementException, InterruptedException {
        int size = (int) Math.ceil(seconds * format.getSampleRate());
        try {
            return taker.take(Math.multiplyExact(size, format.getFrameSize()));
        } catch (IOException e) {
            throw Faults.because(e, "card.records", Said.by(e));
        }
    }

    /** Records what the weighting's filter needs to settle too. */
    @Override
    public SoundObservation observeSound(FrequencyWeighting weighting, String position, double seconds)
            throws MeasurementException, InterruptedException {
        if (microphoneInput == 0) {
            throw Faults.of("noMicrophone");
        }
        byte[] frames = frames(Math.max(1, seconds + SoundLevelMeter.SETTLING_SECONDS));
        double[] one = new double[microphoneInput];
        Arrays.fill(one, 1);
        Waveform shares = Frames.waveforms(frames, format, microphoneInput, one).get(microphoneInput - 1);
        for (int i = 0; i < shares.size(); i++) {
            if (Math.abs(shares.voltsAt(i)) >= FULL_SHARE) {
                throw Faults.of("microphoneClipped", Math.round(microphone.highestLevelDb()));
            }
        }
        try {
            double levelDb = SoundLevelMeter.measure(microphone.pascals(shares), weighting)
                    .equivalentDb();
            return new SoundObservation(
                    clock.instant(), levelDb, weighting, OptionalDouble.of(microphone.standardUncertaintyDb()));
        } catch (SoundException silent) {
            throw MeasurementException.of(Said.by(silent), silent);
        }
    }

    @Override
    public Observation observe() {
        OptionalDouble none = OptionalDouble.empty();
        return new Observation(clock.instant(), none, none, none, none);
    }

    @Override
    public void standDown() {
        stoodDown = true;
        player.silence();
    }

    @Override
    public void close() {
        if (!closed) {
            closed = true;
            standDown();
            player.close();
            taker.close();
        }
    }
}
