// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
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
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.units.Unit;

/** A good measurement, the highest output volts of a tone, with parts that a bad one overrides. */
class PeakMeasurement implements Measurement {
    static final FigureInfo PEAK = new FigureInfo("peak", "highest output", Unit.VOLT, true);

    @Override
    public MeasurementInfo info() {
        return info("1.0.0", Set.of(Ability.TONE, Ability.WAVEFORM), Duration.ofMinutes(1));
    }

    static MeasurementInfo info(String version, Set<Ability> needs, Duration longest) {
        return new MeasurementInfo(
                "org.example.peak",
                version,
                "Peak",
                "The highest volts that the output reaches at a tone.",
                List.of(),
                needs,
                List.of(
                        new Setting.Number("driveDb", "level", "Level of the tone.", Unit.DECIBEL, -20, -60, 0),
                        new Setting.Count("times", "times", "How often it is recorded.", 5, 1, 20)),
                List.of(PEAK),
                longest);
    }

    @Override
    public Readiness readiness(Subject subject) {
        return new Readiness.Ready();
    }

    @Override
    public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
            throws MeasurementException, InterruptedException {
        bench.feed(Feed.Tone.of(1000, settings.number("driveDb")));
        double[] peaks = new double[subject.channelCount()];
        int times = settings.count("times");
        for (int time = 0; time < times; time++) {
            checkpoint(progress, time, times);
            Acquisition acquisition = bench.acquire(0.3);
            progress.recorded(acquisition);
            for (int channel = 0; channel < peaks.length; channel++) {
                for (double each : acquisition.output().channels().get(channel).toArray()) {
                    peaks[channel] = Math.max(peaks[channel], Math.abs(each));
                }
            }
        }
        return atEnd(peaks, times, bench);
    }

    void checkpoint(Progress progress, int time, int times) throws InterruptedException {
        progress.checkpoint();
        progress.at(time / (double) times, "recording");
    }

    /** Given how often it has recorded. */
    MeasurementResult atEnd(double[] peaks, int times, Bench bench) throws MeasurementException, InterruptedException {
        bench.feed(new Feed.Silence());
        if (times < 1) {
            throw new IllegalArgumentException("times is " + times + "; it must be at least 1");
        }
        return result(peaks);
    }

    MeasurementResult result(double[] peaks) {
        List<Figure> figures = new ArrayList<>();
        for (int channel = 0; channel < peaks.length; channel++) {
            figures.add(figure(peaks[channel]).ofChannel(String.valueOf((char) ('A' + channel))));
        }
        return new MeasurementResult(figures, Optional.empty(), List.of());
    }

    Figure figure(double peakVolts) {
        return new Figure("peak", "", "", peakVolts, Unit.VOLT, OptionalDouble.empty());
    }
}
