// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.Spectrum;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.Window;

/**
 * Levels of a recording by the definitions of IEC 61672-1. The recording is a waveform whose unit is the pascal, as
 * {@link MicrophoneCalibration#pascals} gives it; its mean is taken off first. What the microphone adds of its own is in the levels.
 */
public final class SoundLevelMeter {
    /** The reference of sound pressure levels, in pascals. */
    public static final double REFERENCE_PASCAL = 20e-6;

    /**
     * What is left out at the beginning of a recording of a second or more, in seconds. A recording that begins in the middle of a tone
     * begins with a jump, of which A-weighting lets far more through than of a low tone; by then the filter has forgotten it.
     */
    public static final double SETTLING_SECONDS = 0.25;

    private static final double LEAST_SECONDS = 1;
    private static final int PEAK_UPSAMPLING = 4;

    private SoundLevelMeter() {}

    /**
     * Returns the level of a pressure.
     *
     * @param pascalsRms above 0
     */
    public static double levelDb(double pascalsRms) {
        Checks.positive("pascalsRms", pascalsRms);
        return 20 * Math.log10(pascalsRms / REFERENCE_PASCAL);
    }

    /** Returns the pressure of a level, in pascals. */
    public static double pascals(double levelDb) {
        Checks.finite("levelDb", levelDb);
        return REFERENCE_PASCAL * Math.pow(10, levelDb / 20);
    }

    /**
     * Returns all levels of a recording, after {@link #SETTLING_SECONDS} of it; of one shorter than a second all of it counts, a jump at its
     * beginning too.
     *
     * @param pascals instantaneous pressure
     * @param weighting of all but the peak, which is C-weighted
     * @throws SoundException if the recording is wholly silent, so that it has no level
     */
    public static SoundLevels measure(Waveform pascals, FrequencyWeighting weighting) throws SoundException {
        int skipped = pascals.durationSeconds() < LEAST_SECONDS
                ? 0
                : (int) Math.round(SETTLING_SECONDS * pascals.sampleRateHz());
        Meter meter = new Meter(pascals.sampleRateHz());
        new WeightedBlocks(pascals, weighting, 1).forEach(skipped, meter::take);
        double seconds = (pascals.size() - skipped) / pascals.sampleRateHz();
        double meanSquare = meter.squares / (pascals.size() - skipped);
        double peak = peakPascals(pascals, FrequencyWeighting.C, skipped);
        if (!(meanSquare > 0) || !(peak > 0)) {
            throw new SoundException(Texts.said("recording.silent"));
        }
        double equivalentDb = levelDb(Math.sqrt(meanSquare));
        return new SoundLevels(
                weighting,
                equivalentDb,
                equivalentDb + 10 * Math.log10(seconds),
                levelDb(Math.sqrt(meter.highestFast)),
                levelDb(Math.sqrt(meter.highestSlow)),
                levelDb(Math.sqrt(meter.slow)),
                levelDb(peak),
                seconds);
    }

    /**
     * Returns the highest instantaneous weighted pressure in pascals, interpolated between the samples.
     *
     * @param pascals instantaneous pressure
     * @param weighting usually C
     */
    public static double peakPascals(Waveform pascals, FrequencyWeighting weighting) {
        return peakPascals(pascals, weighting, 0);
    }

    private static double peakPascals(Waveform pascals, FrequencyWeighting weighting, int skipped) {
        double[] highest = new double[1];
        new WeightedBlocks(pascals, weighting, PEAK_UPSAMPLING).forEach(skipped, (samples, from, to) -> {
            for (int i = from; i < to; i++) {
                highest[0] = Math.max(highest[0], Math.abs(samples[i]));
            }
        });
        return highest[0];
    }

    /**
     * Returns how the level went: the time-weighted level at equal distances, the first one distance after the beginning, with the jump
     * that a recording may begin with.
     *
     * @param pascals instantaneous pressure
     * @param weighting frequency weighting
     * @param time time weighting
     * @param everySeconds distance, above 0; rounded to whole samples
     * @return levels in dB; where there is silence, the level of the smallest positive number
     */
    public static double[] course(
            Waveform pascals, FrequencyWeighting weighting, TimeWeighting time, double everySeconds) {
        Checks.positive("everySeconds", everySeconds);
        int every = (int) Math.max(1, Math.round(everySeconds * pascals.sampleRateHz()));
        List<Double> levels = new ArrayList<>();
        Meter meter = new Meter(pascals.sampleRateHz());
        int[] count = new int[1];
        new WeightedBlocks(pascals, weighting, 1).forEach(0, (samples, from, to) -> {
            for (int i = from; i < to; i++) {
                meter.take(samples, i, i + 1);
                count[0]++;
                if (count[0] % every == 0) {
                    double square = time == TimeWeighting.FAST ? meter.fast : meter.slow;
                    levels.add(levelDb(Math.sqrt(Math.max(square, Double.MIN_NORMAL))));
                }
            }
        });
        return levels.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /**
     * Returns the equivalent levels of all bands that lie wholly below half the sample rate, from the band of the lowest frequency on.
     * They are sums over a transform with sharp edges, not the filters of IEC 61260-1 with their skirts. Bands without any sound are
     * left out.
     *
     * @param pascals instantaneous pressure, long enough for several cycles of the lowest frequency
     * @param width of the bands
     * @param weighting frequency weighting
     * @param lowestHz above 0; usually 20
     */
    public static List<BandLevel> bands(
            Waveform pascals, FractionalOctave width, FrequencyWeighting weighting, double lowestHz) {
        Spectrum spectrum = Spectrum.of(pascals, Window.HANN);
        List<BandLevel> levels = new ArrayList<>();
        for (int x = width.bandOf(lowestHz); width.highHz(x) <= pascals.sampleRateHz() / 2; x++) {
            double rms = spectrum.bandVoltsRms(width.lowHz(x), width.highHz(x), weighting);
            if (rms > 0) {
                levels.add(new BandLevel(width.centreHz(x), width.nominalHz(x), levelDb(rms), weighting));
            }
        }
        return List.copyOf(levels);
    }

    /** Squares summed, and averaged exponentially: y' = (p^2 - y) / tau, exactly for a p^2 that holds for the length of a sample. */
    private static final class Meter {
        private final double keptFast;
        private final double keptSlow;
        private double squares;
        private double fast;
        private double slow;
        private double highestFast;
        private double highestSlow;

        Meter(double sampleRateHz) {
            keptFast = Math.exp(-1 / (sampleRateHz * TimeWeighting.FAST.timeConstantSeconds()));
            keptSlow = Math.exp(-1 / (sampleRateHz * TimeWeighting.SLOW.timeConstantSeconds()));
        }

        void take(double[] samples, int from, int to) {
            for (int i = from; i < to; i++) {
                double square = samples[i] * samples[i];
                squares += square;
                fast = square + keptFast * (fast - square);
                slow = square + keptSlow * (slow - square);
                highestFast = Math.max(highestFast, fast);
                highestSlow = Math.max(highestSlow, slow);
            }
        }
    }
}
