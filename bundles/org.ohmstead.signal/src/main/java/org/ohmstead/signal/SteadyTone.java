// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The figures of a stretch of samples in which a tone runs steadily. */
final class SteadyTone {
    /** A generator may be off by 50 parts per million or so; a harmonic on the edge of the band must not flicker. */
    private static final double BAND_EDGE_TOLERANCE = 1.001;

    /** Share of half the sample rate that any recorder passes unweakened: 20 kHz of 44.1 kHz. */
    private static final double PASSED_SHARE = 0.92;

    private final double[] samples;
    private final double sampleRateHz;
    private final AnalysisSettings settings;
    private final HarmonicFit fit;
    private final Extremes extremes;
    private final double frequencyHz;
    private final double bandHighHz;
    private double alternatingSquare;
    private double residualSquare;
    private double residualBandSquare;
    private double residualConductance;

    SteadyTone(double[] samples, double sampleRateHz, HarmonicFit fit, AnalysisSettings settings) {
        this(samples, sampleRateHz, fit, settings, null, Extremes.of(samples));
    }

    /**
     * Works the figures out.
     *
     * @param spectrum the transform of the samples, which saves that of what is left of them; null if there is none
     * @param extremes of the samples
     */
    SteadyTone(
            double[] samples,
            double sampleRateHz,
            HarmonicFit fit,
            AnalysisSettings settings,
            PlainSpectrum spectrum,
            Extremes extremes) {
        this.samples = samples;
        this.extremes = extremes;
        this.sampleRateHz = sampleRateHz;
        this.settings = settings;
        this.fit = fit;
        this.frequencyHz = fit.radiansPerSample() * sampleRateHz / (2 * Math.PI);
        this.bandHighHz = Math.min(settings.bandHighHz(), sampleRateHz / 2);
        if (spectrum == null) {
            sumResidualSpectrum();
        } else {
            ModelSpectrum model = ModelSpectrum.of(fit, samples.length);
            // Half the square of a Hann window's sum is 3/8 of its length.
            sumBand(spectrum.rest(fit.dcVolts(), model), samples.length, 0.375 * samples.length);
        }
        sumWholeCycles();
    }

    /** Fits a stretch of samples; the orders fitted are at least those that count as distortion. */
    static HarmonicFit fit(double[] samples, double radiansPerSample, boolean refine, AnalysisSettings settings)
            throws CaptureException {
        try {
            return HarmonicFit.of(samples, radiansPerSample, Math.max(20, settings.highestHarmonic()), refine);
        } catch (ArithmeticException e) {
            throw new CaptureException(Texts.said("tone.short"), e);
        }
    }

    private double cycles() {
        return samples.length * fit.radiansPerSample() / (2 * Math.PI);
    }

    private void sumResidualSpectrum() {
        double[] work = Arrays.copyOf(fit.residual(), RealTransform.paddedSize(samples.length));
        double weightSquare = samples.length;
        if (cycles() >= 4.5) {
            // A weight keeps strong components outside the band (a switching carrier) from leaking into it.
            double[] weights = Window.HANN.centredWeights(samples.length);
            weightSquare = 0;
            for (int i = 0; i < samples.length; i++) {
                work[i] *= weights[i];
                weightSquare += weights[i] * weights[i];
            }
        }
        sumBand(Lines.of(RealTransform.squaredMagnitudes(work)), work.length, weightSquare);
    }

    private void sumBand(Lines lines, int size, double weightSquare) {
        double binHz = sampleRateHz / size;
        double scale = 1 / (size * weightSquare);
        boolean reactive = !(settings.load() instanceof LoadImpedance.Resistance);
        double conducted = 0;
        // Of these, from one to another, the whole bin lies within the band.
        int wholeFrom = (int) Math.min(lines.count(), Math.floor(settings.bandLowHz() / binHz) + 2);
        int wholeTo = (int) Math.max(wholeFrom, Math.min(lines.count(), Math.ceil(bandHighHz / binHz) - 1));
        double[] squares = new double[Lines.TOGETHER];
        for (int first = 0; first < lines.count(); first += squares.length) {
            int end = Math.min(lines.count(), first + squares.length);
            lines.squares(first, end, squares);
            for (int i = 0; i < end - first; i++) {
                squares[i] *= 2 * scale;
            }
            if (first == 0) {
                squares[0] *= 0.5;
            }
            if (2 * (end - 1) == size) {
                squares[end - 1 - first] *= 0.5;
            }
            residualSquare += Sums.of(squares, 0, end - first);
            int from = Math.max(first, Math.min(end, wholeFrom));
            int to = Math.max(from, Math.min(end, wholeTo));
            residualBandSquare += Sums.of(squares, from - first, to - first);
            residualBandSquare +=
                    sumAtEdge(squares, first, first, from, binHz) + sumAtEdge(squares, first, to, end, binHz);
            for (int k = first; k < end && reactive; k++) {
                conducted += squares[k - first] * settings.load().realPowerWatts(1, k * binHz);
            }
        }
        // The power in a resistance comes from the whole level at once.
        residualConductance = residualSquare > 0 ? conducted / residualSquare : 0;
    }

    /** Sums up lines of which some may lie within the band in part; far outside there is nothing to sum. */
    private double sumAtEdge(double[] squares, int first, int from, int to, double binHz) {
        double sum = 0;
        int start = (int) Math.max(from, Math.min(to, Math.floor(settings.bandLowHz() / binHz) - 2));
        int end = (int) Math.max(start, Math.min(to, Math.ceil(bandHighHz / binHz) + 2));
        for (int k = start; k < end; k++) {
            sum += squares[k - first] * Spectrum.shareInBand(k, binHz, settings.bandLowHz(), bandHighHz);
        }
        return sum;
    }

    /** Mean square over whole cycles: that of the model, which is exact, plus what the residual adds to it. */
    private void sumWholeCycles() {
        double period = 2 * Math.PI / fit.radiansPerSample();
        double whole = Math.max(1, Math.floor(samples.length / period + 1e-6));
        int count = (int) Math.min(samples.length, Math.max(1, Math.rint(whole * period)));
        int from = (samples.length - count) / 2;
        double[] alternating = Sums.withSquares(samples, from, from + count, fit.dcVolts());
        double[] wave = fit.waveSums(from, count);
        double added = alternating[1] - wave[1];
        double mean = (alternating[0] - wave[0]) / count;
        double modelSquare = 0;
        for (int n = 1; n <= fit.orders(); n++) {
            modelSquare += square(n);
        }
        alternatingSquare = Math.max(0, modelSquare + added / count - mean * mean);
    }

    private double square(int order) {
        double amplitude = fit.amplitudeVolts(order);
        return 0.5 * amplitude * amplitude;
    }

    private int highestOrderInBand() {
        return highestOrderInBand(fit.orders(), bandHighHz, frequencyHz);
    }

    /** The highest order, of those that were fitted, below the upper end of the band. */
    static int highestOrderInBand(int orders, double bandHighHz, double frequencyHz) {
        return (int) Math.min(orders, Math.floor(bandHighHz * BAND_EDGE_TOLERANCE / frequencyHz));
    }

    /** Whether an order lies above the lower end of the band. */
    static boolean isAboveLow(int order, double bandLowHz, double frequencyHz) {
        return order * frequencyHz * BAND_EDGE_TOLERANCE >= bandLowHz;
    }

    /** The filter of a recorder falls off towards half the sample rate, which would pass for another wave shape. */
    static int highestOrderPassed(int orders, double bandHighHz, double frequencyHz, double sampleRateHz) {
        return (int) Math.min(
                highestOrderInBand(orders, bandHighHz, frequencyHz),
                Math.floor(PASSED_SHARE * sampleRateHz / 2 / frequencyHz));
    }

    /** Whether the tone rises above what noise alone shows at its strongest frequency. */
    boolean isTone(boolean hinted) {
        double noisePeak = 2 * residualSquare * Math.log(Math.max(2, samples.length / 2.0)) / samples.length;
        return square(1) > 10 * noisePeak && (hinted || square(1) > 0.1 * alternatingSquare);
    }

    double alternatingVoltsRms() {
        return Math.sqrt(alternatingSquare);
    }

    double powerWatts() {
        return figures().powerWatts();
    }

    private ToneFigures figures() {
        double[] squares = new double[fit.orders() + 1];
        for (int n = 1; n < squares.length; n++) {
            squares[n] = square(n);
        }
        return new ToneFigures(
                settings, frequencyHz, bandHighHz, squares, alternatingSquare, residualBandSquare, residualConductance);
    }

    private double outputVoltsPeak() {
        return Math.max(extremes.high() - fit.dcVolts(), fit.dcVolts() - extremes.low());
    }

    ChannelAnalysis result(Optional<Burst> burst, List<String> earlierNotes) {
        List<String> notes = new ArrayList<>(earlierNotes);
        List<Harmonic> harmonics = harmonics(notes);
        Window window = HarmonicFit.windowFor(cycles());
        double factorVariance = 2 * residualSquare * window.noiseBandwidthBins() / samples.length;
        int passed = highestOrderPassed(fit.orders(), bandHighHz, frequencyHz, sampleRateHz);
        return figures()
                .analysis(
                        fit.dcVolts(),
                        outputVoltsPeak(),
                        harmonics,
                        ClippingFit.of(fit, passed, factorVariance),
                        burst,
                        notes);
    }

    private List<Harmonic> harmonics(List<String> notes) {
        int highest = Math.min(settings.highestHarmonic(), highestOrderInBand());
        List<Harmonic> harmonics = new ArrayList<>();
        for (int n = 2; n <= highest; n++) {
            harmonics.add(new Harmonic(
                    n, fit.amplitudeVolts(n) / fit.amplitudeVolts(1), Math.toDegrees(fit.sinePhaseRadians(n))));
        }
        noteHighest(highest, settings, frequencyHz, bandHighHz, notes);
        return harmonics;
    }

    /** Notes if fewer harmonics count than were asked for. */
    static void noteHighest(
            int highest, AnalysisSettings settings, double frequencyHz, double bandHighHz, List<String> notes) {
        if (highest < 2) {
            notes.add(Texts.say("note.noHarmonic", Digits.of(frequencyHz, 6), Digits.of(bandHighHz, 6)));
        } else if (highest < settings.highestHarmonic()) {
            notes.add(Texts.say("note.harmonics", highest, Digits.of(bandHighHz, 6)));
        }
    }
}
