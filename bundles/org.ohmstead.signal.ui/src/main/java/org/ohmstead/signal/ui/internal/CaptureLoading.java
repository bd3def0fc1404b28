// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.ohmstead.signal.AnalysisSettings;
import org.ohmstead.signal.Burst;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.CaptureFile;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.ClippingLimits;
import org.ohmstead.signal.ExtremaPyramid;
import org.ohmstead.signal.LoadImpedance;
import org.ohmstead.signal.SineFit;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.WaveformAnalyzer;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.LoggedCaptures;
import org.ohmstead.workbench.session.SessionException;
import org.ohmstead.workbench.session.WorkProgress;

/** Reads, checks and analyses one capture, away from the user interface. */
final class CaptureLoading implements BackgroundWork.Task<LoadedCapture> {
    private static final int MOST_SAMPLES_ANALYSED = 1 << 22;
    /** A fit of one sine to this many samples is as good as one to all of them. */
    private static final int MOST_SAMPLES_FITTED = 1 << 16;

    private static final int LEAST_CYCLES_WITH_MARGIN = 8;

    private final CaptureOrder order;
    private final BooleanSupplier superseded;

    /**
     * Makes the work.
     *
     * @param superseded tells, on any thread, that something else is wanted by now
     */
    CaptureLoading(CaptureOrder order, BooleanSupplier superseded) {
        this.order = order;
        this.superseded = superseded;
    }

    @Override
    public LoadedCapture run(WorkProgress progress) throws CaptureException, CaptureMissingException {
        step(progress, 0, 3, Texts.say("work.reading", order.title()));
        Path file = order.sha256().isPresent() ? verified(order.sha256().get()) : order.place();
        Capture capture = read(file);
        int count = order.sha256().isPresent()
                ? Math.min(order.channels().size(), capture.channels().size())
                : capture.channels().size();
        List<LoadedChannel> channels = new ArrayList<>();
        for (int index = 0; index < count; index++) {
            step(
                    progress,
                    index + 1,
                    count + 1,
                    Texts.say("work.channel", order.channel(index).name()));
            channels.add(channel(index, capture.channels().get(index)));
        }
        stop(progress);
        return new LoadedCapture(order, capture.formatText(), channels);
    }

    private Path verified(String sha256) throws CaptureMissingException {
        try {
            return LoggedCaptures.verified(order.place(), sha256, order.title());
        } catch (SessionException e) {
            throw new CaptureMissingException(e.getMessage(), e);
        }
    }

    private Capture read(Path file) throws CaptureException {
        double[] scales = order.voltsPerFullScale().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        try {
            return CaptureFile.read(file, scales);
        } catch (CaptureException e) {
            // A logged capture lies under its hash, which says nothing to the user.
            throw order.sha256().isPresent()
                    ? new CaptureException(Texts.say("work.named", order.title(), e.getMessage()), e)
                    : e;
        }
    }

    private void step(WorkProgress progress, int done, int total, String what) {
        stop(progress);
        progress.step(done, total, what);
    }

    private void stop(WorkProgress progress) {
        progress.stopIfCancelled();
        if (superseded.getAsBoolean()) {
            throw new CancellationException("Another capture is wanted by now.");
        }
    }

    private LoadedChannel channel(int index, Waveform waveform) {
        CaptureOrder.Channel wanted = order.channel(index);
        Optional<LoadedChannel.Tone> tone = Optional.empty();
        String whyNot = "";
        try {
            tone = Optional.of(tone(waveform, wanted.load().orElse(new LoadImpedance.Resistance(1))));
        } catch (CaptureException e) {
            whyNot = e.getMessage();
        }
        SpectrumTrace spectrum = SpectrumTrace.of(
                waveform,
                tone.map(LoadedChannel.Tone::fromSample).orElse(0),
                tone.map(LoadedChannel.Tone::toSample).orElse(waveform.size()),
                tone.map(found -> found.analysis().frequencyHz()).orElse(0.0));
        return new LoadedChannel(
                wanted.name(),
                index,
                wanted.load().isPresent(),
                waveform,
                ExtremaPyramid.of(waveform),
                spectrum,
                tone,
                whyNot);
    }

    private LoadedChannel.Tone tone(Waveform waveform, LoadImpedance load) throws CaptureException {
        AnalysisSettings settings = AnalysisSettings.forLoad(load);
        OptionalDouble frequencyHz = order.frequencyHz();
        if (frequencyHz.isPresent()) {
            settings = settings.withFrequencyHz(frequencyHz.getAsDouble());
        }
        ChannelAnalysis analysis = WaveformAnalyzer.analyze(waveform, settings);
        int from = Math.max(0, (waveform.size() - MOST_SAMPLES_ANALYSED) / 2);
        int to = Math.min(waveform.size(), from + MOST_SAMPLES_ANALYSED);
        if (analysis.burst().isPresent()) {
            Burst burst = analysis.burst().get();
            // The edges of a burst ring; a long one can spare a cycle at each end, as its figures do.
            double margin = burst.cycles() >= LEAST_CYCLES_WITH_MARGIN ? 1 / analysis.frequencyHz() : 0;
            double rate = waveform.sampleRateHz();
            int burstFrom = from + (int) Math.round((burst.onsetSeconds() + margin) * rate);
            int burstTo = from + (int) Math.round((burst.onsetSeconds() + burst.onSeconds() - margin) * rate);
            to = Math.min(to, Math.max(burstFrom + 1, burstTo));
            from = Math.min(burstFrom, to - 1);
        }
        return new LoadedChannel.Tone(
                analysis, ClippingLimits.of(analysis), fundamental(waveform, analysis, from, to), from, to);
    }

    private static FundamentalWave fundamental(Waveform waveform, ChannelAnalysis analysis, int from, int to) {
        int last = Math.min(to, from + MOST_SAMPLES_FITTED);
        double rate = waveform.sampleRateHz();
        double[] samples = waveform.slice(from, last).toArray();
        SineFit fit = SineFit.threeParameter(samples, rate, analysis.frequencyHz());
        double peakAt = from / rate - fit.phaseRadians() / (2 * Math.PI * analysis.frequencyHz());
        return new FundamentalWave(
                analysis.frequencyHz(), Math.sqrt(2) * analysis.fundamentalVoltsRms(), analysis.dcVolts(), peakAt);
    }
}
