// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.FigureInfo;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Progress;
import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.units.Unit;

/** A measurement that does what a test tells it to. */
final class FakeMeasurement implements Measurement {
    static final FigureInfo PEAK = new FigureInfo("peak", "peak volts", Unit.VOLT, true);

    /** What it does. */
    interface Work {
        MeasurementResult run(Bench bench, Progress progress) throws MeasurementException, InterruptedException;
    }

    private final MeasurementInfo info;
    private final Work work;

    FakeMeasurement(String id, Work work) {
        this(id, Duration.ofSeconds(20), work);
    }

    FakeMeasurement(String id, Duration longest, Work work) {
        this.info = new MeasurementInfo(
                id,
                "1.2.3",
                "Fake " + id,
                "Does what a test wants.",
                List.of(),
                Set.of(Ability.TONE, Ability.WAVEFORM),
                List.of(),
                List.of(PEAK),
                longest);
        this.work = work;
    }

    /** One that records once and gives the peak of the first channel. */
    static FakeMeasurement good(String id) {
        return new FakeMeasurement(id, FakeMeasurement::peak);
    }

    static MeasurementResult peak(Bench bench, Progress progress) throws MeasurementException, InterruptedException {
        bench.feed(Feed.Tone.of(1000, -10));
        progress.at(0.5, "recording");
        Acquisition acquisition = bench.acquire(0.01);
        progress.recorded(acquisition);
        bench.feed(new Feed.Silence());
        progress.checkpoint();
        double peakVolts = 0;
        for (double volts : acquisition.output().channels().get(0).toArray()) {
            peakVolts = Math.max(peakVolts, volts);
        }
        return MeasurementResult.of(Figure.of(PEAK, peakVolts).ofChannel("A"));
    }

    @Override
    public MeasurementInfo info() {
        return info;
    }

    @Override
    public Readiness readiness(Subject subject) {
        return new Readiness.Ready();
    }

    @Override
    public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
            throws MeasurementException, InterruptedException {
        return work.run(bench, progress);
    }
}
