// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * Amplitude spectrum of a waveform: volts RMS at frequencies k * sampleRate / N from 0 to half the sample rate. A sine
 * in the middle of a bin shows its RMS value; noise shows the RMS value within the noise bandwidth of the window.
 */
public final class Spectrum {
    private final Window window;
    private final double binHz;
    private final double[] voltsRms;

    private Spectrum(Window window, double binHz, double[] voltsRms) {
        this.window = window;
        this.binHz = binHz;
        this.voltsRms = voltsRms;
    }

    /** Returns the spectrum of the whole waveform, with its mean taken off first. */
    public static Spectrum of(Waveform waveform, Window window) {
        int size = waveform.size();
        double[] squares = SmoothTransform.serves(size)
                ? waveform.plainSpectrum().squares(window)
                : RealTransform.squaredMagnitudes(weighted(waveform, window));
        double scale = Math.sqrt(2) / (size * window.coherentGain());
        double[] volts = squares;
        for (int k = 0; k < squares.length; k++) {
            volts[k] = scale * Math.sqrt(squares[k]);
        }
        volts[0] /= Math.sqrt(2);
        if (size % 2 == 0) {
            volts[size / 2] /= Math.sqrt(2);
        }
        return new Spectrum(window, waveform.sampleRateHz() / size, volts);
    }

    private static double[] weighted(Waveform waveform, Window window) {
        double[] samples = waveform.toArray();
        double mean = 0;
        for (double sample : samples) {
            mean += sample / samples.length;
        }
        double[] weights = window.weights(samples.length);
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (samples[i] - mean) * weights[i];
        }
        return samples;
    }

    /** Returns the window that was used. */
    public Window window() {
        return window;
    }

    /** Returns the number of bins: half the number of samples, plus one. */
    public int size() {
        return voltsRms.length;
    }

    /** Returns the distance between two bins in hertz. */
    public double binHz() {
        return binHz;
    }

    /** Returns the frequency of a bin in hertz. */
    public double frequencyHz(int bin) {
        return bin * binHz;
    }

    /**
     * Returns the volts RMS of a bin.
     *
     * @throws IndexOutOfBoundsException if the bin is not within 0 to {@code size() - 1}
     */
    public double voltsRmsAt(int bin) {
        return voltsRms[bin];
    }

    /** Returns a copy of all frequencies in hertz. */
    public double[] frequenciesHz() {
        double[] frequencies = new double[voltsRms.length];
        for (int k = 0; k < frequencies.length; k++) {
            frequencies[k] = k * binHz;
        }
        return frequencies;
    }

    /** Returns a copy of the volts RMS of all bins. */
    public double[] voltsRms() {
        return voltsRms.clone();
    }

    /**
     * Returns the RMS voltage of everything between two frequencies, with each component weighted: the root of the sum
     * of the squared bins over the noise bandwidth of the window. Bins that the band cuts count by the share inside.
     *
     * @param lowHz lower end, 0 or above
     * @param highHz upper end, above the lower end
     * @param weighting weight of each frequency
     * @throws IllegalArgumentException if the band is empty or begins below zero
     */
    public double bandVoltsRms(double lowHz, double highHz, FrequencyWeighting weighting) {
        if (!(lowHz >= 0) || !(highHz > lowHz)) {
            throw new IllegalArgumentException(
                    "lowHz must be 0 or above and highHz above it, but are " + lowHz + " and " + highHz);
        }
        double sum = 0;
        for (int k = 0; k < voltsRms.length; k++) {
            double share = shareInBand(k, binHz, lowHz, highHz);
            if (share > 0) {
                double gain = weighting.gainRatio(Math.max(k * binHz, 0.25 * binHz));
                sum += share * voltsRms[k] * voltsRms[k] * gain * gain;
            }
        }
        return Math.sqrt(sum / window.noiseBandwidthBins());
    }

    /** Share of a bin, from half a bin below its frequency to half a bin above, that lies within a band. */
    static double shareInBand(int bin, double binHz, double lowHz, double highHz) {
        double from = Math.max(0, (bin - 0.5) * binHz);
        double to = (bin + 0.5) * binHz;
        double overlap = Math.min(to, highHz) - Math.max(from, lowHz);
        return Math.max(0, overlap) / (to - from);
    }
}
