// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import java.util.Arrays;
import org.jtransforms.fft.DoubleFFT_1D;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.Waveform;
import org.visnow.jlargearrays.ConcurrencyUtils;

/**
 * Puts a recording through the analogue filter of a weighting, block by block (overlap-save). The filter is applied as the complex
 * response at each frequency of a transform, so there is none of the error near half the sample rate that a filter made by a bilinear
 * transform has. Each block reaches a quarter of its length into its neighbours; what the filter still remembers of more than that,
 * half a second at least, has died down by more than 500 dB.
 */
final class WeightedBlocks {
    private static final double SHORTEST_BLOCK_SECONDS = 2;

    private final Waveform wave;
    private final double mean;
    private final int size;
    private final int upsampling;
    private final double[] real;
    private final double[] imaginary;
    private final DoubleFFT_1D forward;
    private final DoubleFFT_1D backward;

    static {
        // One thread: sums in a fixed order give the same digits on every machine.
        ConcurrencyUtils.setNumberOfThreads(1);
    }

    /** Takes the filtered samples of one block after the other. */
    interface Taker {
        void take(double[] samples, int from, int to);
    }

    /**
     * Makes the filter for one recording.
     *
     * @param upsampling how many samples to give for each of the recording's, interpolated by the transform; a power of two
     */
    WeightedBlocks(Waveform wave, FrequencyWeighting weighting, int upsampling) {
        this.wave = wave;
        this.upsampling = upsampling;
        double sum = 0;
        for (int i = 0; i < wave.size(); i++) {
            sum += wave.voltsAt(i);
        }
        this.mean = sum / wave.size();
        int atLeast = (int) Math.ceil(SHORTEST_BLOCK_SECONDS * wave.sampleRateHz());
        this.size = Integer.highestOneBit(Math.max(8, atLeast) - 1) << 1;
        this.real = new double[size / 2 + 1];
        this.imaginary = new double[size / 2 + 1];
        for (int k = 1; k <= size / 2; k++) {
            double frequencyHz = k * wave.sampleRateHz() / size;
            double gain = weighting.gainRatio(frequencyHz);
            double phase = weighting.phaseRadians(frequencyHz);
            real[k] = gain * Math.cos(phase);
            imaginary[k] = gain * Math.sin(phase);
        }
        real[0] = weighting == FrequencyWeighting.Z ? 1 : 0;
        this.forward = new DoubleFFT_1D(size);
        this.backward = upsampling == 1 ? forward : new DoubleFFT_1D((long) size * upsampling);
    }

    /** Hands the recording over, filtered, without so many of its own samples at the beginning. */
    void forEach(int skipped, Taker taker) {
        int quarter = size / 4;
        int hop = size / 2;
        double[] block = new double[size];
        for (int start = 0; start < wave.size(); start += hop) {
            for (int i = 0; i < size; i++) {
                int at = start - quarter + i;
                block[i] = at >= 0 && at < wave.size() ? wave.voltsAt(at) - mean : 0;
            }
            forward.realForward(block);
            apply(block);
            double[] out = block;
            if (upsampling > 1) {
                out = Arrays.copyOf(block, size * upsampling);
                // The last element of the transform is stored in the second; of a longer one it is an ordinary one,
                // halved.
                out[size] = block[1] / 2;
                out[1] = 0;
                for (int i = 0; i < out.length; i++) {
                    out[i] *= upsampling;
                }
            }
            backward.realInverse(out, true);
            int from = Math.max(0, skipped - start);
            int to = Math.min(hop, wave.size() - start);
            if (from < to) {
                taker.take(out, (quarter + from) * upsampling, (quarter + to) * upsampling);
            }
        }
    }

    private void apply(double[] block) {
        block[0] *= real[0];
        block[1] *= real[size / 2];
        for (int k = 1; k < size / 2; k++) {
            double re = block[2 * k];
            double im = block[2 * k + 1];
            block[2 * k] = re * real[k] - im * imaginary[k];
            block[2 * k + 1] = re * imaginary[k] + im * real[k];
        }
    }
}
