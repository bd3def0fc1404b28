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
    private final double frequencyHz;
    private final double bandHighHz;
    private double alternatingSquare;
    private double residualSquare;
    private double residualBandSquare;
    private double residualConductance;

    SteadyTone(double[] samples, double sampleRateHz, HarmonicFit fit, AnalysisSettings settings) {
        this(samples, sampleRateHz, fit, settings, null);
    }

    /**
     * Works the figures out.
     *
     * @param spectrum the transform of the samples, which saves that of what is left of them; null if there is none
     */
    SteadyTone(
            double[] samples, double sampleRateHz, HarmonicFit fit, AnalysisSettings settings, PlainSpectrum spectrum) {
        this.samples = samples;
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
            sumBand(
                    spectrum.restSquares(fit.dcVolts(), model.real(), model.imaginary()),
                    samples.length,
                    0.375 * samples.length);
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
        sumBand(RealTransform.squaredMagnitudes(work), work.length, weightSquare);
    }

    private void sumBand(double[] squares, int size, double weightSquare) {
        double binHz = sampleRateHz / size;
        double scale = 1 / (size * weightSquare);
        boolean reactive = !(settings.load() instanceof LoadImpedance.Resistance);
        double conducted = 0;
        for (int k = 0; k < squares.length; k++) {
            double square = squares[k] * (k == 0 || 2 * k == size ? scale : 2 * scale);
            residualSquare += square;
            double hertz = k * binHz;
            if (hertz - binHz > settings.bandLowHz() && hertz + binHz < bandHighHz) {
                residualBandSquare += square;
            } else {
                residualBandSquare += square * Spectrum.shareInBand(k, binHz, settings.bandLowHz(), bandHighHz);
            }
            if (reactive) {
                conducted += square * settings.load().realPowerWatts(1, hertz);
            }
        }
        // The power in a resistance comes from the whole level at once.
        residualConductance = residualSquare > 0 ? conducted / residualSquare : 0;
    }

    /** Mean square over whole cycles: that of the model, which is exact, plus what the residual adds to it. */
    private void sumWholeCycles() {
        double period = 2 * Math.PI / fit.radiansPerSample();
        double whole = Math.max(1, Math.floor(samples.length / period + 1e-6));
        int count = (int) Math.min(samples.length, Math.max(1, Math.rint(whole * period)));
        int from = (samples.length - count) / 2;
        double dcVolts = fit.dcVolts();
        double sum = 0;
        double squareSum = 0;
        for (int i = from; i < from + count; i++) {
            double alternating = samples[i] - dcVolts;
            sum += alternating;
            squareSum += alternating * alternating;
        }
        double[] wave = fit.waveSums(from, count);
        double added = squareSum - wave[1];
        double mean = (sum - wave[0]) / count;
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
        double dcVolts = fit.dcVolts();
        double low = samples[0];
        double high = samples[0];
        for (double sample : samples) {
            if (sample < low) {
                low = sample;
            } else if (sample > high) {
                high = sample;
            }
        }
        return Math.max(high - dcVolts, dcVolts - low);
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
