// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.stimulus;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.SampledSource;
import org.ohmstead.signal.Spectrum;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.stimulus.Stimulus;
import org.ohmstead.signal.stimulus.TestSignal;
import org.ohmstead.units.text.Messages;

/** The pictures of a signal: its wave in shares of full scale, and its spectrum in dBFS. */
final class PreviewPlots {
    private static final Messages TEXTS = Messages.of(PreviewPlots.class);
    private static final double LOWEST_DBFS = -180;
    private static final double LOWEST_SHOWN_DBFS = -160;
    private static final double LOWEST_HZ = 10;
    private static final int BUCKETS = 1200;
    private static final int CYCLES = 5;
    private static final double HEADROOM = 1.08;

    private PreviewPlots() {}

    /**
     * Draws a wave.
     *
     * @param perSecond 1 for an axis in seconds, 1000 for one in milliseconds
     */
    static PlotSource wave(Waveform wave, double perSecond) {
        double[] samples = wave.toArray();
        double peak = 1e-9;
        for (double sample : samples) {
            peak = Math.max(peak, Math.abs(sample));
        }
        Axis time = Axis.linear(TEXTS.text("plot.time"), perSecond > 1 ? "ms" : "s")
                .withRange(0, wave.durationSeconds() * perSecond);
        Axis share = Axis.linear(TEXTS.text("plot.share"), "").withRange(-HEADROOM * peak, HEADROOM * peak);
        return SampledSource.of(Plot.of("", time, share)).with("", 0, perSecond / wave.sampleRateHz(), samples, 0);
    }

    /** How many seconds to show first: a few cycles of steady tones, a period of bursts; empty for the whole, as of a sweep. */
    static OptionalDouble firstSeconds(Stimulus stimulus) {
        TestSignal signal = stimulus.signal();
        double seconds = Double.POSITIVE_INFINITY;
        if (signal instanceof TestSignal.ToneBursts bursts) {
            seconds = 1.2 * bursts.pattern().periodSeconds();
        } else if (signal instanceof TestSignal.PinkNoise) {
            seconds = 0.5;
        } else if (!(signal instanceof TestSignal.LogSweep)) {
            seconds = CYCLES / stimulus.facts().frequenciesHz().get(0);
            if (signal instanceof TestSignal.TwoTone pair && pair.highHz() < 2 * pair.lowHz()) {
                // The beat tells more than the cycles.
                seconds = 2 / (pair.highHz() - pair.lowHz());
            }
        }
        return seconds < Math.min(stimulus.frames(), SignalPreview.MOST_SAMPLES) / (double) stimulus.sampleRateHz()
                ? OptionalDouble.of(seconds)
                : OptionalDouble.empty();
    }

    /** The highest line of each of many parts of the logarithmic axis. */
    static Plot spectrum(Spectrum spectrum) {
        double highest = spectrum.frequencyHz(spectrum.size() - 1);
        double perBucket = Math.log(highest / LOWEST_HZ) / BUCKETS;
        List<PlotPoint> points = new ArrayList<>();
        int bucket = -1;
        double bestHz = 0;
        double bestDbfs = 0;
        for (int k = 1; k < spectrum.size(); k++) {
            double hertz = spectrum.frequencyHz(k);
            if (hertz < LOWEST_HZ) {
                continue;
            }
            double dbfs = Math.max(LOWEST_DBFS, 20 * Math.log10(Math.sqrt(2) * spectrum.voltsRmsAt(k)));
            int place = (int) (Math.log(hertz / LOWEST_HZ) / perBucket);
            if (place != bucket) {
                if (bucket >= 0) {
                    points.add(new PlotPoint(bestHz, bestDbfs));
                }
                bucket = place;
                bestDbfs = LOWEST_DBFS;
                bestHz = hertz;
            }
            if (dbfs > bestDbfs) {
                bestDbfs = dbfs;
                bestHz = hertz;
            }
        }
        points.add(new PlotPoint(Math.max(bestHz, LOWEST_HZ), Math.max(LOWEST_DBFS, bestDbfs)));
        Axis frequency = Axis.log(TEXTS.text("plot.frequency"), "Hz").withRange(LOWEST_HZ, highest);
        Axis level = Axis.linear(TEXTS.text("plot.level"), "dBFS").withRange(LOWEST_SHOWN_DBFS, 5);
        return Plot.of("", frequency, level).withSeries(new Series("", points, Style.LINE, 0));
    }
}
