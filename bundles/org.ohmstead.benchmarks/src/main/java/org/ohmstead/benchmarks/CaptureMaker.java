// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.SampleFormat;
import org.ohmstead.signal.WavStream;
import org.ohmstead.signal.Waveforms;

/** Makes captures as a bench would record them: tones with a little distortion, noise and direct voltage, some of them clipped. */
final class CaptureMaker {
    /** Full scale of all captures. */
    static final double VOLTS_PER_FULL_SCALE = 50;

    private static final int BLOCK = 8192;
    private static final double NOISE_VOLTS_RMS = 1e-3;
    static final double DIRECT_VOLTS = 0.012;
    static final double SECOND_RATIO = 0.0008;
    static final double THIRD_RATIO = 0.0005;

    private CaptureMaker() {}

    /**
     * One channel of a capture.
     *
     * @param frequencyHz of the tone
     * @param voltsPeak amplitude before the limit
     * @param limitVolts what cuts the tops off; infinite for none
     */
    record Tone(double frequencyHz, double voltsPeak, double limitVolts) {}

    /** Writes a capture of 24 bits with one channel for each tone. */
    static void write(Path file, int sampleRateHz, long frames, long seed, Tone... tones) throws IOException {
        Random random = new Random(seed);
        double[][] block = new double[tones.length][BLOCK];
        try (WavStream stream = WavStream.create(file, sampleRateHz, tones.length, SampleFormat.INTEGER_24, frames)) {
            for (long from = 0; from < frames; from += BLOCK) {
                int count = (int) Math.min(BLOCK, frames - from);
                fill(block, count, from, sampleRateHz, random, tones);
                stream.write(block, count);
            }
            stream.finish();
        } catch (CaptureException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    /** Writes a long capture quickly: the same second again and again, so that the frequencies must be whole numbers of hertz. */
    static void writeSeconds(Path file, int sampleRateHz, int seconds, Tone... tones) throws IOException {
        double[][] second = new double[tones.length][sampleRateHz];
        fill(second, sampleRateHz, 0, sampleRateHz, new Random(seconds), tones);
        long frames = (long) seconds * sampleRateHz;
        try (WavStream stream = WavStream.create(file, sampleRateHz, tones.length, SampleFormat.INTEGER_24, frames)) {
            for (int i = 0; i < seconds; i++) {
                stream.write(second, sampleRateHz);
            }
            stream.finish();
        } catch (CaptureException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    private static void fill(double[][] block, int count, long from, int sampleRateHz, Random random, Tone... tones) {
        for (int channel = 0; channel < tones.length; channel++) {
            for (int i = 0; i < count; i++) {
                double phase = Waveforms.phaseRadians(tones[channel].frequencyHz(), from + i, sampleRateHz);
                double noise = NOISE_VOLTS_RMS * random.nextGaussian();
                block[channel][i] = (volts(tones[channel], phase) + noise) / VOLTS_PER_FULL_SCALE;
            }
        }
    }

    private static double volts(Tone tone, double phase) {
        double sine = Math.sin(phase) + SECOND_RATIO * Math.sin(2 * phase) + THIRD_RATIO * Math.sin(3 * phase);
        double limited = Math.max(-tone.limitVolts(), Math.min(tone.limitVolts(), tone.voltsPeak() * sine));
        return limited + DIRECT_VOLTS;
    }

    /** Writes short captures of one channel and a quarter of a second, each of another frequency and level, every fourth clipped. */
    static void writeShort(Path folder, int count) throws IOException {
        Files.createDirectories(folder);
        Random random = new Random(count);
        for (int i = 0; i < count; i++) {
            double frequencyHz = 400 + 2000 * random.nextDouble();
            double voltsPeak = 8 + 24 * random.nextDouble();
            double limitVolts = i % 4 == 0 ? 0.8 * voltsPeak : Double.POSITIVE_INFINITY;
            Path file = folder.resolve("capture-" + (100_000 + i) + ".wav");
            write(file, 48_000, 12_000, i, new Tone(frequencyHz, voltsPeak, limitVolts));
        }
    }
}
