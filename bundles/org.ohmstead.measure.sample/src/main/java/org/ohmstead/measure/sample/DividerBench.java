// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.sample;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.Waveform;

/** Divides what is fed. It has no supply and no meters; once it was made safe it feeds nothing until it is opened anew. */
final class DividerBench implements Bench {
    private static final double SAMPLE_RATE_HZ = 48_000;
    private static final double LONGEST_SECONDS = 60;

    private final Subject subject;
    private final double seriesOhms;
    private final double shuntOhms;
    private final double sourceVoltsRms;
    private BenchLoad load;
    private int channels;
    private Feed feed = new Feed.Silence();
    // Written by whichever thread makes it safe.
    private volatile boolean safe;
    private volatile boolean closed;

    DividerBench(Subject subject, double seriesOhms, double shuntOhms, double sourceVoltsRms) {
        this.subject = subject;
        this.seriesOhms = seriesOhms;
        this.shuntOhms = shuntOhms;
        this.sourceVoltsRms = sourceVoltsRms;
        this.load = subject.load();
        this.channels = subject.channelCount();
    }

    @Override
    public Set<Ability> abilities() {
        return Set.of(Ability.TONE, Ability.WAVEFORM, Ability.INPUT_WAVEFORM, Ability.SELECT_LOAD);
    }

    @Override
    public void connect(Mode mode, BenchLoad newLoad) throws MeasurementException, InterruptedException {
        requireOpen();
        feed = new Feed.Silence();
        int wanted = mode == Mode.STEREO ? subject.project().amplifier().channelCount() : 1;
        if (newLoad.branches().size() < wanted) {
            throw new MeasurementException("The load \"" + newLoad.id() + "\" has not enough resistances for " + wanted
                    + " channels. Choose another load.");
        }
        load = newLoad;
        channels = wanted;
    }

    @Override
    public void setSupplyVolts(double supplyVolts) throws MeasurementException {
        throw new MeasurementException("Resistors have no supply. Choose a bench that sets the supply volts.");
    }

    @Override
    public void feed(Feed newFeed) throws MeasurementException, InterruptedException {
        requireOpen();
        if (safe && !(newFeed instanceof Feed.Silence)) {
            throw new MeasurementException("The bench was made safe, so nothing is fed. Open it anew.");
        }
        if (newFeed instanceof Feed.Burst
                || newFeed instanceof Feed.Tone tone && tone.channel().isPresent()) {
            throw new MeasurementException(
                    "The divider is fed steady tones into all channels only. Choose another bench.");
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
                    "At most " + LONGEST_SECONDS + " s are recorded at once. Record for a shorter time.");
        }
        double[] fed = fed((int) Math.ceil(seconds * SAMPLE_RATE_HZ));
        List<Waveform> output = new ArrayList<>();
        for (int channel = 0; channel < channels; channel++) {
            double outputOhms = parallel(shuntOhms, load.branches().get(channel).ohms());
            double[] volts = fed.clone();
            for (int i = 0; i < volts.length; i++) {
                volts[i] *= outputOhms / (seriesOhms + outputOhms);
            }
            output.add(Waveform.of(SAMPLE_RATE_HZ, volts));
        }
        double fullScaleVolts = 2 * sourceVoltsRms;
        return Acquisition.of(new Capture(output, "divider", "reckoned"), fullScaleVolts, observe())
                .withInput(new Capture(List.of(Waveform.of(SAMPLE_RATE_HZ, fed)), "divider", "reckoned"));
    }

    private static double parallel(double oneOhms, double otherOhms) {
        return oneOhms * otherOhms / (oneOhms + otherOhms);
    }

    private double[] fed(int count) {
        double[] volts = new double[count];
        if (!safe && feed instanceof Feed.Tone tone) {
            double peakVolts = Math.sqrt(2) * sourceVoltsRms * Math.pow(10, tone.driveDb() / 20);
            for (int i = 0; i < count; i++) {
                volts[i] = peakVolts * Math.sin(2 * Math.PI * tone.frequencyHz() * i / SAMPLE_RATE_HZ);
            }
        }
        return volts;
    }

    @Override
    public Observation observe() throws MeasurementException, InterruptedException {
        requireOpen();
        OptionalDouble none = OptionalDouble.empty();
        return new Observation(Instant.now(), none, none, none, none);
    }

    @Override
    public void standDown() {
        safe = true;
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
            throw new MeasurementException("The bench was closed. Open it again.");
        }
    }
}
