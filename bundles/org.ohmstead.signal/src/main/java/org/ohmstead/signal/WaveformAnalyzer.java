// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Finds out what a captured tone shows: frequency, level, power, distortion, noise, clipping, bursts. The record need
 * not hold whole cycles, and may have direct voltage, hum and noise in it. The tone is fitted together with its harmonics
 * by least squares; everything that is left over is sorted by frequency.
 */
public final class WaveformAnalyzer {
    /** A record with more is gone through in segments. */
    static final int MOST_SAMPLES = 1 << 22;

    private static final int LEAST_SAMPLES = 16;
    private static final double LEAST_CYCLES = 2.9;
    private static final double FLAT_RATIO = 1e-12;
    private static final double BURST_POWER_SHARE = 0.3;

    private WaveformAnalyzer() {}

    /**
     * Analyses one channel.
     *
     * @param waveform the record in volts; a record beyond 4,194,304 samples is analysed in segments, with a note
     * @param settings load, frequency if known, harmonics, band
     * @throws CaptureException if the record holds no tone, or too little of it, with a sentence that says what was
     *     found and what to check
     */
    public static ChannelAnalysis analyze(Waveform waveform, AnalysisSettings settings) throws CaptureException {
        if (waveform.size() > MOST_SAMPLES) {
            return LongAnalysis.of(RecordedChannel.of(waveform), settings, LongSizes.USUAL, share -> {});
        }
        List<String> notes = new ArrayList<>();
        double[] samples = waveform.raw();
        if (samples.length < LEAST_SAMPLES) {
            throw new CaptureException(Texts.said("tone.fewSamples", samples.length, LEAST_SAMPLES));
        }
        double sampleRateHz = waveform.sampleRateHz();
        requireBand(settings, sampleRateHz, notes);
        double[] alternating = alternating(samples);
        OptionalDouble hint = settings.frequencyHz().isPresent()
                ? OptionalDouble.of(2 * Math.PI * settings.frequencyHz().getAsDouble() / sampleRateHz)
                : OptionalDouble.empty();
        ToneFinder coarse = ToneFinder.of(alternating, Window.RECTANGULAR, hint);
        if (coarse.powerShareNear() >= BURST_POWER_SHARE) {
            double radians = coarse.radiansPerSample();
            BurstTrain train = BurstTrain.of(alternating, 2 * Math.PI / radians);
            if (!train.isEmpty()) {
                double refined = train.refinedRadians(alternating, radians);
                BurstTrain again = refined == radians ? train : BurstTrain.of(alternating, 2 * Math.PI / refined);
                if (!again.isEmpty()) {
                    train = again;
                    radians = refined;
                }
                Optional<ChannelAnalysis> inBursts =
                        new BurstAnalysis(samples, sampleRateHz, radians, settings, train).result(notes);
                if (inBursts.isPresent()) {
                    return inBursts.get();
                }
            }
        }
        return steady(samples, alternating, sampleRateHz, hint, settings, notes);
    }

    private static ChannelAnalysis steady(
            double[] samples,
            double[] alternating,
            double sampleRateHz,
            OptionalDouble hint,
            AnalysisSettings settings,
            List<String> notes)
            throws CaptureException {
        double radians = ToneFinder.of(alternating, Window.HANN, hint).radiansPerSample();
        if (samples.length * radians < 2 * Math.PI * 5) {
            radians = ToneFinder.of(alternating, Window.RECTANGULAR, hint).radiansPerSample();
            radians = requireCycles(samples, sampleRateHz, radians);
        }
        SteadyTone tone =
                new SteadyTone(samples, sampleRateHz, SteadyTone.fit(samples, radians, true, settings), settings);
        if (!tone.isTone(hint.isPresent())) {
            throw new CaptureException(
                    hint.isPresent()
                            ? Texts.said(
                                    "tone.noneNear",
                                    Texts.four(tone.alternatingVoltsRms()),
                                    Digits.of(settings.frequencyHz().getAsDouble(), 6))
                            : Texts.said("tone.none", Texts.four(tone.alternatingVoltsRms())));
        }
        return tone.result(Optional.empty(), notes);
    }

    private static double requireCycles(double[] samples, double sampleRateHz, double radians) throws CaptureException {
        double startHz = radians * sampleRateHz / (2 * Math.PI);
        SineFit fit;
        try {
            fit = SineFit.fourParameter(samples, sampleRateHz, startHz);
        } catch (IllegalArgumentException e) {
            throw tooFewCycles(startHz, samples.length / sampleRateHz, e);
        }
        double cycles = fit.frequencyHz() * samples.length / sampleRateHz;
        if (cycles < LEAST_CYCLES) {
            throw tooFewCycles(fit.frequencyHz(), samples.length / sampleRateHz, null);
        }
        return 2 * Math.PI * fit.frequencyHz() / sampleRateHz;
    }

    private static CaptureException tooFewCycles(double frequencyHz, double durationSeconds, Throwable cause) {
        return new CaptureException(
                Texts.said(
                        "tone.fewCycles",
                        Texts.four(durationSeconds),
                        Digits.of(frequencyHz * durationSeconds, 2),
                        Digits.of(frequencyHz, 3),
                        Digits.of(3 / frequencyHz, 3)),
                cause);
    }

    private static void requireBand(AnalysisSettings settings, double sampleRateHz, List<String> notes)
            throws CaptureException {
        double half = sampleRateHz / 2;
        if (settings.bandLowHz() >= half) {
            throw new CaptureException(Texts.said(
                    "tone.bandBegins",
                    Digits.of(settings.bandLowHz(), 6),
                    Digits.of(sampleRateHz, 6),
                    Digits.of(half, 6)));
        }
        if (settings.frequencyHz().isPresent() && settings.frequencyHz().getAsDouble() >= half) {
            throw new CaptureException(Texts.said(
                    "tone.tooHigh", Digits.of(settings.frequencyHz().getAsDouble(), 6), Digits.of(sampleRateHz, 6)));
        }
        if (settings.bandHighHz() > half) {
            notes.add(Texts.say("note.bandEnds", Digits.of(half, 6), Digits.of(settings.bandHighHz(), 6)));
        }
    }

    private static double[] alternating(double[] samples) throws CaptureException {
        double low = samples[0];
        double high = samples[0];
        double mean = 0;
        for (double sample : samples) {
            low = Math.min(low, sample);
            high = Math.max(high, sample);
            mean += sample / samples.length;
        }
        double largest = Math.max(Math.abs(low), Math.abs(high));
        if (largest <= 0) {
            throw new CaptureException(Texts.said("tone.silent"));
        }
        if (high - low <= FLAT_RATIO * largest) {
            throw new CaptureException(Texts.said("tone.direct", Texts.four(mean)));
        }
        double[] alternating = new double[samples.length];
        for (int i = 0; i < samples.length; i++) {
            alternating[i] = samples[i] - mean;
        }
        return alternating;
    }
}
