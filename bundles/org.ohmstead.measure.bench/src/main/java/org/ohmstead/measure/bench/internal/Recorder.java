// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.Waveform;

/** A recorder of 24 bits with a filter, several ranges, and the amplifier's noise added to what it hears. */
final class Recorder {
    private static final double[] RANGES = {0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000};
    private static final double STEPS = 1 << 23;
    private static final int CHUNK = 4800;
    private static final double FINE_ABOVE_HZ = 4000;

    private final double sampleRateHz;
    private final double voltsPerFullScale;
    private final double noiseVoltsRms;
    private final Random random;

    /** Makes a recorder in the lowest range that takes a peak, with room for noise. */
    Recorder(double sampleRateHz, double peakVolts, double noiseVoltsRms, Random random) {
        this.sampleRateHz = sampleRateHz;
        this.noiseVoltsRms = noiseVoltsRms;
        this.random = random;
        double needed = 1.2 * peakVolts + 8 * noiseVoltsRms;
        this.voltsPerFullScale = Arrays.stream(RANGES)
                .filter(range -> range >= needed)
                .findFirst()
                .orElse(RANGES[RANGES.length - 1]);
    }

    double voltsPerFullScale() {
        return voltsPerFullScale;
    }

    Capture silence(int outputs, int count, double meterRatio) {
        double[][] samples = new double[outputs][count];
        return capture(samples, meterRatio);
    }

    /** Records a circuit from a time of its feed on, after it has run for a while. */
    Capture record(
            Circuit circuit,
            int outputs,
            Drive drive,
            double fromSeconds,
            double settleSeconds,
            int count,
            double meterRatio) {
        int factor = drive.frequencyHz() > FINE_ABOVE_HZ ? 32 : 8;
        Decimator decimator = new Decimator(factor);
        double stepSeconds = 1 / (sampleRateHz * factor);
        double begin = fromSeconds - decimator.margin() * stepSeconds;
        long settling = (long) Math.ceil(Math.min(settleSeconds, Math.max(0, begin)) / stepSeconds);
        double[] now = new double[outputs];
        for (long i = -settling; i < 0; i++) {
            circuit.step(begin + i * stepSeconds, stepSeconds, now);
        }
        double[][] samples = new double[outputs][count];
        double[][] fine = new double[outputs][2 * decimator.margin() + CHUNK * factor];
        int filled = 0;
        long step = 0;
        for (int done = 0; done < count; done += CHUNK) {
            int part = Math.min(CHUNK, count - done);
            int needed = 2 * decimator.margin() + part * factor;
            for (; filled < needed; filled++) {
                circuit.step(begin + step * stepSeconds, stepSeconds, now);
                step++;
                for (int output = 0; output < outputs; output++) {
                    fine[output][filled] = now[output];
                }
            }
            for (int output = 0; output < outputs; output++) {
                System.arraycopy(decimator.samples(fine[output], part), 0, samples[output], done, part);
                System.arraycopy(fine[output], part * factor, fine[output], 0, filled - part * factor);
            }
            filled -= part * factor;
        }
        return capture(samples, meterRatio);
    }

    private Capture capture(double[][] samples, double meterRatio) {
        List<Waveform> channels = new ArrayList<>();
        double step = voltsPerFullScale / STEPS;
        for (double[] channel : samples) {
            for (int i = 0; i < channel.length; i++) {
                double heard = channel[i] + (noiseVoltsRms > 0 ? noiseVoltsRms * random.nextGaussian() : 0);
                double level = Math.rint(heard * meterRatio / step);
                channel[i] = step * Math.max(-STEPS, Math.min(STEPS - 1, level));
            }
            channels.add(Waveform.of(sampleRateHz, channel));
        }
        return new Capture(
                channels,
                "simulated",
                String.format(Locale.ROOT, "24-bit, %d channels, %.0f Hz", samples.length, sampleRateHz));
    }

    /** What was fed in, without errors. */
    static Capture input(Drive drive, int channels, double fromSeconds, int count, double sampleRateHz) {
        List<Waveform> inputs = new ArrayList<>();
        for (int channel = 0; channel < channels; channel++) {
            double[] samples = new double[count];
            for (int i = 0; i < count; i++) {
                samples[i] = drive.voltsPeak(channel) * drive.shareAt(fromSeconds + i / sampleRateHz, 0);
            }
            inputs.add(Waveform.of(sampleRateHz, samples));
        }
        return new Capture(inputs, "simulated source", String.format(Locale.ROOT, "%.0f Hz", sampleRateHz));
    }
}
