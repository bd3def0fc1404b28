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
    /** From here on a line of the spectrum is far enough from its mirror image, and the record holds many lengths of its cycle. */
    private static final double MANY_CYCLES = 20;

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
        Extremes extremes = Extremes.of(samples);
        double mean = requireAlternating(samples, extremes);
        OptionalDouble hint = settings.frequencyHz().isPresent()
                ? OptionalDouble.of(2 * Math.PI * settings.frequencyHz().getAsDouble() / sampleRateHz)
                : OptionalDouble.empty();
        if (SmoothTransform.serves(samples.length)) {
            OptionalDouble radians = steadyRadians(waveform, mean, hint);
            if (radians.isPresent()) {
                HarmonicFit fit = SteadyTone.fit(samples, radians.getAsDouble(), true, settings);
                SteadyTone tone =
                        new SteadyTone(samples, sampleRateHz, fit, settings, waveform.plainSpectrum(), extremes);
                return steady(tone, hint.isPresent(), settings, notes);
            }
        }
        double[] alternating = alternating(samples, mean);
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
        return steady(tone, hint.isPresent(), settings, notes);
    }

    private static ChannelAnalysis steady(
            SteadyTone tone, boolean hinted, AnalysisSettings settings, List<String> notes) throws CaptureException {
        if (!tone.isTone(hinted)) {
            throw new CaptureException(
                    hinted
                            ? Texts.said(
                                    "tone.noneNear",
                                    Texts.four(tone.alternatingVoltsRms()),
                                    Digits.of(settings.frequencyHz().getAsDouble(), 6))
                            : Texts.said("tone.none", Texts.four(tone.alternatingVoltsRms())));
        }
        return tone.result(Optional.empty(), notes);
    }

    /** The frequency of a tone of many cycles that runs through the whole record, from one transform; empty if there is none. */
    private static OptionalDouble steadyRadians(Waveform record, double mean, OptionalDouble hint) {
        int size = record.size();
        double least = 2 * Math.PI * MANY_CYCLES / size;
        PlainSpectrum spectrum = record.plainSpectrum();
        ToneFinder coarse = ToneFinder.in(spectrum.lines(Window.RECTANGULAR), size, size, hint);
        double radians = coarse.radiansPerSample();
        if (radians < least
                || coarse.powerShareNear() >= BURST_POWER_SHARE
                        && !BurstTrain.isSteady(record.raw(), mean, 2 * Math.PI / radians)) {
            return OptionalDouble.empty();
        }
        double found =
                ToneFinder.in(spectrum.lines(Window.HANN), size, size, hint).radiansPerSample();
        return found < least ? OptionalDouble.empty() : OptionalDouble.of(found);
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

    /** Returns the mean of samples that are not all the same. */
    private static double requireAlternating(double[] samples, Extremes extremes) throws CaptureException {
        if (extremes.largest() <= 0) {
            throw new CaptureException(Texts.said("tone.silent"));
        }
        double mean = Sums.of(samples, 0, samples.length) / samples.length;
        if (extremes.high() - extremes.low() <= FLAT_RATIO * extremes.largest()) {
            throw new CaptureException(Texts.said("tone.direct", Texts.four(mean)));
        }
        return mean;
    }

    private static double[] alternating(double[] samples, double mean) {
        double[] alternating = new double[samples.length];
        for (int i = 0; i < samples.length; i++) {
            alternating[i] = samples[i] - mean;
        }
        return alternating;
    }
}
