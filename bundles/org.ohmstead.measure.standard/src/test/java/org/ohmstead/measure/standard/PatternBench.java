// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.Observation;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.Waveform;

/** A bench whose two channels give a sine of 0 dB = 40 V peak with as much second harmonic as a curve says for a level. */
final class PatternBench implements Bench {
    private final DoubleUnaryOperator thdRatioOfDriveDb;
    private final List<Double> fedDb = new ArrayList<>();
    private Feed feed = new Feed.Silence();

    PatternBench(DoubleUnaryOperator thdRatioOfDriveDb) {
        this.thdRatioOfDriveDb = thdRatioOfDriveDb;
    }

    /** The levels that were fed, in order. */
    List<Double> fedDb() {
        return fedDb;
    }

    @Override
    public Set<Ability> abilities() {
        return EnumSet.of(Ability.TONE, Ability.WAVEFORM);
    }

    @Override
    public void connect(Mode mode, BenchLoad load) {
        feed = new Feed.Silence();
    }

    @Override
    public void setSupplyVolts(double supplyVolts) {
        feed = new Feed.Silence();
    }

    @Override
    public void feed(Feed newFeed) {
        feed = newFeed;
        if (newFeed instanceof Feed.Tone tone) {
            fedDb.add(tone.driveDb());
        }
    }

    @Override
    public Acquisition acquire(double seconds) {
        Feed.Tone tone = (Feed.Tone) feed;
        double peak = 40 * Math.pow(10, tone.driveDb() / 20);
        double thdRatio = thdRatioOfDriveDb.applyAsDouble(tone.driveDb());
        double[] samples = new double[(int) Math.ceil(seconds * 48_000)];
        for (int i = 0; i < samples.length; i++) {
            double phase = 2 * Math.PI * tone.frequencyHz() * i / 48_000;
            samples[i] = peak * (Math.sin(phase) + thdRatio * Math.cos(2 * phase));
        }
        Waveform wave = Waveform.of(48_000, samples);
        return Acquisition.of(new Capture(List.of(wave, wave), "made", "made"), 100, observe());
    }

    @Override
    public Observation observe() {
        OptionalDouble none = OptionalDouble.empty();
        return new Observation(Instant.EPOCH, OptionalDouble.of(14.4), none, none, none);
    }

    @Override
    public void standDown() {
        feed = new Feed.Silence();
    }

    @Override
    public void close() {
        standDown();
    }
}
