// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SweepPoint;
import org.ohmstead.signal.AnalysisSettings;
import org.ohmstead.signal.Burst;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.CaptureFile;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.SineFit;
import org.ohmstead.signal.Spectrum;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.WaveformAnalyzer;
import org.ohmstead.signal.Window;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.LoggedCaptures;
import org.ohmstead.workbench.session.SessionException;

/** Reads and analyses the capture of a reading's channel that lies nearest to its end point. */
final class PairWaves {
    private static final Messages TEXTS = Messages.of(PairWaves.class);

    /** Level of a bin in which nothing is, so that it has a place on a decibel axis. */
    static final double LEAST_DB = -200;

    private static final int MOST_SAMPLES = 1 << 21;
    /** A fit of one sine to this many samples is as good as one to all of them. */
    private static final int MOST_SAMPLES_FITTED = 1 << 16;

    private static final int LEAST_CYCLES_WITH_MARGIN = 8;
    private static final double LEAST_WATTS = 1e-9;

    private PairWaves() {}

    /** Returns the place of a channel by name, or that of the weakest when the reading has none of that name. */
    static int channel(Reading reading, String wanted) {
        List<ChannelReading> channels = reading.channels();
        for (int index = 0; index < channels.size(); index++) {
            if (channels.get(index).channel().equals(wanted)) {
                return index;
            }
        }
        return channels.indexOf(reading.weakestChannel());
    }

    /** Returns the capture nearest to the end point of a channel; the last one where the reading does not say; empty without any. */
    static Optional<CaptureUsed> nearest(Reading reading, ChannelReading channel) {
        List<CaptureUsed> captures = reading.provenance().captures();
        // Power is interpolated in its logarithm, so the nearest level is the nearest there.
        double wanted = Math.log(Math.max(LEAST_WATTS, channel.powerWatts()));
        Optional<String> hash = channel.sweep().stream()
                .min(Comparator.comparingDouble(
                        point -> Math.abs(Math.log(Math.max(LEAST_WATTS, point.powerWatts())) - wanted)))
                .map(SweepPoint::captureSha256);
        return captures.stream()
                .filter(capture -> hash.isPresent() && capture.sha256().equals(hash.get()))
                .findFirst()
                .or(() -> captures.isEmpty() ? Optional.empty() : Optional.of(captures.get(captures.size() - 1)));
    }

    /**
     * Reads a capture and analyses one channel of it.
     *
     * @param channelIndex the channel's place in the reading, which is that in the capture
     */
    static PairWave read(Reading reading, int channelIndex, CaptureUsed used, Path capturesFolder)
            throws SessionException, CaptureException {
        Path file = LoggedCaptures.verified(capturesFolder, used.sha256(), used.fileName());
        double[] scales = used.voltsPerFullScale().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        Capture capture = CaptureFile.read(file, scales);
        if (channelIndex >= capture.channels().size()) {
            throw new SessionException(TEXTS.text(
                    "pair.capture.noChannel",
                    used.fileName(),
                    reading.channels().get(channelIndex).channel()));
        }
        Waveform wave = middle(capture.channels().get(channelIndex), MOST_SAMPLES);
        ChannelReading channel = reading.channels().get(channelIndex);
        ChannelAnalysis analysis = WaveformAnalyzer.analyze(
                wave,
                AnalysisSettings.forResistance(channel.loadOhms())
                        .withFrequencyHz(reading.stimulus().frequencyHz()));
        int[] stretch = stretch(wave, analysis);
        Spectrum spectrum = Spectrum.of(wave.slice(stretch[0], stretch[1]), Window.BLACKMAN_HARRIS_4);
        return new PairWave(
                used.fileName(),
                used.sha256(),
                capture.formatText(),
                channel.channel(),
                wave.sampleRateHz(),
                wave.toArray(),
                zeroSeconds(wave, analysis.frequencyHz(), stretch),
                levels(spectrum, analysis.fundamentalVoltsRms()),
                spectrum.binHz(),
                analysis);
    }

    private static Waveform middle(Waveform wave, int most) {
        int from = Math.max(0, (wave.size() - most) / 2);
        return from == 0 && wave.size() <= most ? wave : wave.slice(from, from + most);
    }

    /** First sample that counts, and the one after the last: the whole, or the first burst without its ringing edges. */
    private static int[] stretch(Waveform wave, ChannelAnalysis analysis) {
        if (analysis.burst().isEmpty()) {
            return new int[] {0, wave.size()};
        }
        Burst burst = analysis.burst().get();
        double margin = burst.cycles() >= LEAST_CYCLES_WITH_MARGIN ? 1 / analysis.frequencyHz() : 0;
        int from = (int) Math.round((burst.onsetSeconds() + margin) * wave.sampleRateHz());
        int to = (int) Math.round((burst.onsetSeconds() + burst.onSeconds() - margin) * wave.sampleRateHz());
        int last = Math.min(wave.size(), Math.max(from + 2, to));
        return new int[] {Math.max(0, Math.min(from, last - 2)), last};
    }

    private static double zeroSeconds(Waveform wave, double frequencyHz, int[] stretch) {
        int last = Math.min(stretch[1], stretch[0] + MOST_SAMPLES_FITTED);
        SineFit fit = SineFit.threeParameter(wave.slice(stretch[0], last).toArray(), wave.sampleRateHz(), frequencyHz);
        // cos(w t + phase) rises through zero a quarter of a cycle before its peak.
        double turns = -fit.phaseRadians() / (2 * Math.PI) - 0.25;
        return stretch[0] / wave.sampleRateHz() + (turns - Math.floor(turns)) / frequencyHz;
    }

    private static double[] levels(Spectrum spectrum, double fundamentalVoltsRms) {
        double[] levels = new double[Math.max(1, spectrum.size() - 1)];
        for (int bin = 1; bin < spectrum.size(); bin++) {
            double ratio = fundamentalVoltsRms > 0 ? spectrum.voltsRmsAt(bin) / fundamentalVoltsRms : 0;
            levels[bin - 1] = ratio > 0 ? Math.max(LEAST_DB, 20 * Math.log10(ratio)) : LEAST_DB;
        }
        return levels;
    }
}
