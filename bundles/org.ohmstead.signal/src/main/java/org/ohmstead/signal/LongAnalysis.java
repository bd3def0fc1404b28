// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleConsumer;

/**
 * The analysis of a record that is too long to be held or to be fitted as a whole. The tone is found in a stretch of it by the
 * {@link WaveformAnalyzer}; then the record is gone through once, piece by piece. What is needed of memory does not
 * grow with the record.
 */
final class LongAnalysis {
    /** Where stretches are looked at, from the middle outwards, until one holds a steady tone. */
    private static final double[] PLACES = {0.5, 0.25, 0.75, 0.125, 0.875, 0.375, 0.625, 0, 1};

    private LongAnalysis() {}

    /**
     * Analyses one channel.
     *
     * @param channel the record
     * @param settings as for any analysis
     * @param sizes how it is cut up
     * @param progress told the share that is done, 0 to 1
     * @throws CaptureException if the record cannot be read, or no tone is found in it
     */
    static ChannelAnalysis of(
            RecordedChannel channel, AnalysisSettings settings, LongSizes sizes, DoubleConsumer progress)
            throws CaptureException {
        Start start = start(channel, settings, sizes);
        if (start.inBursts) {
            return ofStretch("note.long.bursts", channel, start);
        }
        double radians = start.radiansPerSample(channel.sampleRateHz());
        int size = sizes.segment(channel.size(), radians);
        if (size == 0) {
            return ofStretch("note.long.low", channel, start);
        }
        double peak = Math.sqrt(2) * start.analysis.fundamentalVoltsRms();
        ToneSegment tone = new ToneSegment(0, radians, 0, peak, 0, true, Clipping.NONE);
        SegmentWalk walk = new SegmentWalk(channel, size, tone, start.analysis.dcVolts(), settings);
        walk.run(progress);
        return walk.steadyCount() == 0
                ? ofStretch("note.long.unsteady", channel, start)
                : new LongResult(walk).result();
    }

    /** The figures of the stretch alone, with a note that says why. */
    private static ChannelAnalysis ofStretch(String key, RecordedChannel channel, Start start) {
        List<String> notes = new ArrayList<>();
        notes.add(Texts.say(
                key,
                Texts.four(channel.size() / channel.sampleRateHz()),
                Texts.four(start.size / channel.sampleRateHz()),
                Texts.four(start.from / channel.sampleRateHz())));
        notes.addAll(start.analysis.notes());
        ChannelAnalysis found = start.analysis;
        return new ChannelAnalysis(
                found.frequencyHz(),
                found.outputVoltsRms(),
                found.outputVoltsPeak(),
                found.dcVolts(),
                found.crestFactorDb(),
                found.powerWatts(),
                found.fundamentalVoltsRms(),
                found.fundamentalPowerWatts(),
                found.thdFRatio(),
                found.thdRRatio(),
                found.thdPlusNoiseRRatio(),
                found.sinadDb(),
                found.harmonics(),
                found.clipping(),
                found.burst(),
                found.bandLowHz(),
                found.bandHighHz(),
                notes);
    }

    private static Start start(RecordedChannel channel, AnalysisSettings settings, LongSizes sizes)
            throws CaptureException {
        int size = (int) Math.min(sizes.stretch(), channel.size());
        CaptureException first = null;
        Start pattern = null;
        Start single = null;
        for (double place : PLACES) {
            long from = (long) (place * (channel.size() - size));
            double[] volts = new double[size];
            channel.read(from, volts, 0, size);
            try {
                ChannelAnalysis analysis =
                        WaveformAnalyzer.analyze(Waveform.wrap(channel.sampleRateHz(), volts), settings);
                if (analysis.burst().isEmpty()) {
                    return new Start(from, size, analysis, false);
                }
                if (analysis.burst().get().periodSeconds().isPresent()) {
                    pattern = pattern == null ? new Start(from, size, analysis, true) : pattern;
                } else {
                    // One burst may be a tone that only begins or ends in this stretch.
                    single = single == null ? new Start(from, size, analysis, false) : single;
                }
            } catch (CaptureException e) {
                first = first == null ? e : first;
            }
        }
        if (pattern != null) {
            return pattern;
        }
        if (single != null) {
            return single;
        }
        throw Objects.requireNonNull(first, "each stretch shows a tone or says why not");
    }

    /**
     * A stretch in which the tone was found.
     *
     * @param from its first sample
     * @param size number of samples
     * @param analysis what it shows
     * @param inBursts whether the tone comes in bursts again and again
     */
    private record Start(long from, int size, ChannelAnalysis analysis, boolean inBursts) {
        double radiansPerSample(double sampleRateHz) {
            return 2 * Math.PI * analysis.frequencyHz() / sampleRateHz;
        }
    }
}
