// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.function.DoubleUnaryOperator;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.ExtremaPyramid;
import org.ohmstead.signal.WavFile;
import org.ohmstead.signal.Waveform;
import org.ohmstead.workbench.session.WorkProgress;

/** Captures for the tests, made from closed forms. */
final class Waves {
    static final double RATE_HZ = 48_000;
    static final double FULL_SCALE_VOLTS = 60;

    static final WorkProgress NO_PROGRESS = new WorkProgress() {
        @Override
        public void step(int done, int total, String what) {
            if (done < 0 || done > total || what.isBlank()) {
                throw new IllegalArgumentException("step is " + done + " of " + total + ": " + what);
            }
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    };

    private Waves() {}

    /** A function of the phase in radians. */
    static double[] of(int size, double frequencyHz, DoubleUnaryOperator wave) {
        double[] samples = new double[size];
        for (int i = 0; i < size; i++) {
            double cycles = frequencyHz * i / RATE_HZ;
            samples[i] = wave.applyAsDouble(2 * Math.PI * (cycles - Math.floor(cycles)));
        }
        return samples;
    }

    static double[] withNoise(double[] samples, double voltsRms, long seed) {
        Random random = new Random(seed);
        double[] noisy = samples.clone();
        for (int i = 0; i < noisy.length; i++) {
            noisy[i] += voltsRms * random.nextGaussian();
        }
        return noisy;
    }

    static Path write(Path file, double[]... channels) throws CaptureException {
        List<Waveform> waveforms = Arrays.stream(channels)
                .map(samples -> Waveform.of(RATE_HZ, samples))
                .toList();
        WavFile.write(file, new Capture(waveforms, "test", "test"), 24, new double[] {FULL_SCALE_VOLTS});
        return file;
    }

    /** Loads channels as a file of the user's choice, at a load of 4 ohms. */
    static LoadedCapture load(Path folder, double[]... channels) {
        try {
            Path file = write(folder.resolve("wave.wav"), channels);
            CaptureOrder order = CaptureOrder.file(file, FULL_SCALE_VOLTS, OptionalDouble.of(4));
            return new CaptureLoading(order, () -> false).run(NO_PROGRESS);
        } catch (CaptureException | CaptureMissingException | CancellationException e) {
            throw new IllegalStateException(e.getMessage(), e);
        }
    }

    /** A capture without analysis, for drawing alone. */
    static LoadedCapture bare(double[] samples) {
        Waveform waveform = Waveform.of(RATE_HZ, samples);
        CaptureOrder order = CaptureOrder.file(Path.of("bare.wav"), 1, OptionalDouble.empty());
        return new LoadedCapture(
                order,
                "test",
                List.of(new LoadedChannel(
                        "A",
                        0,
                        false,
                        waveform,
                        ExtremaPyramid.of(waveform),
                        SpectrumTrace.of(waveform, 0, Math.min(4096, samples.length), 0),
                        Optional.empty(),
                        "not analysed")));
    }
}
