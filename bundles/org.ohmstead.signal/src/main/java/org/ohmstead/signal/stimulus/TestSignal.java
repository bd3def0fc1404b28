// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.signal.Waveforms.BurstPattern;

/**
 * What is fed into an amplifier under test, independent of sample rate and file.
 *
 * <p>Levels are in dBFS as AES17 counts them: 0 dBFS is the RMS value of a sine whose peak just reaches full scale, so a sine's level says its
 * peak as well. Kinds whose peak is the plainer figure (bursts, sweeps, pairs of tones) give the level of the sine with the same peak; each
 * kind says so.
 */
public sealed interface TestSignal {
    /** The lowest level that is made, in dBFS. */
    double LOWEST_DBFS = -140;

    /** The most tones at once. */
    int MOST_TONES = 128;

    /** The longest signal, in seconds. */
    double LONGEST_SECONDS = 4 * 3600.0;

    /** Returns the level in dBFS; the kind says whether that is of its RMS value or of its peak. */
    double levelDbfs();

    /** Returns the length in seconds that was asked for. */
    double durationSeconds();

    /** Returns the highest frequency in it, in hertz. */
    double highestHz();

    /**
     * Returns the same signal so many decibels lower, as a gain overlap wants it: an end point set at -10 dBFS leaves 10 dB for quiet
     * recordings.
     *
     * @param db 0 or above
     */
    TestSignal lowered(double db);

    /**
     * A sine.
     *
     * @param frequencyHz above zero
     * @param levelDbfs of its RMS value, which is that of its peak too; at most 0
     * @param durationSeconds above zero
     */
    record Sine(double frequencyHz, double levelDbfs, double durationSeconds) implements TestSignal {
        /** Checks the ranges. */
        public Sine {
            Checks.frequency("frequencyHz", frequencyHz);
            Checks.common(levelDbfs, durationSeconds);
        }

        @Override
        public double highestHz() {
            return frequencyHz;
        }

        @Override
        public Sine lowered(double db) {
            return new Sine(frequencyHz, Checks.lower(levelDbfs, db), durationSeconds);
        }
    }

    /**
     * One tone of several.
     *
     * @param frequencyHz above zero
     * @param relativeDb against the other tones
     */
    record Tone(double frequencyHz, double relativeDb) {
        /** Checks the ranges. */
        public Tone {
            Checks.frequency("frequencyHz", frequencyHz);
            Checks.within("relativeDb", relativeDb, -140, 140);
        }
    }

    /**
     * Several tones at once, with phases that keep the crest factor low: that of cosine k is -2 pi times the sum over l below k of (k - l) p_l, with
     * the shares p_l of the power (M. R. Schroeder, IEEE Trans. Inf. Theory 16 (1970) 85-89, equation 11), about 1.7 (4.6 dB) for evenly spaced
     * tones; or the best of some random phases where those are better, as with octaves.
     *
     * @param tones 1 to 128, each frequency once; sorted by frequency
     * @param levelDbfs of the RMS value of all together; the peak lies higher by the crest factor less 3.01 dB
     * @param durationSeconds above zero
     */
    record MultiTone(List<Tone> tones, double levelDbfs, double durationSeconds) implements TestSignal {
        /** Checks the ranges, and copies and sorts the tones. */
        public MultiTone {
            List<Tone> sorted = new ArrayList<>(tones);
            sorted.sort((a, b) -> Double.compare(a.frequencyHz(), b.frequencyHz()));
            tones = List.copyOf(sorted);
            if (tones.isEmpty() || tones.size() > MOST_TONES) {
                throw new IllegalArgumentException("tones must be 1 to " + MOST_TONES + ", but are " + tones.size());
            }
            for (int i = 1; i < tones.size(); i++) {
                if (tones.get(i).frequencyHz() <= tones.get(i - 1).frequencyHz()) {
                    throw new IllegalArgumentException("tones must have different frequencies, but "
                            + tones.get(i).frequencyHz() + " Hz is there twice");
                }
            }
            Checks.common(levelDbfs, durationSeconds);
        }

        @Override
        public double highestHz() {
            return tones.get(tones.size() - 1).frequencyHz();
        }

        @Override
        public MultiTone lowered(double db) {
            return new MultiTone(tones, Checks.lower(levelDbfs, db), durationSeconds);
        }
    }

    /**
     * A sine that stays at one frequency for a while, then goes on to the next, evenly spaced on a logarithmic scale.
     *
     * @param fromHz the first frequency
     * @param toHz the last, different from the first; may be the lower one
     * @param stepsPerOctave 1 to 48; the spacing is made to end at the last frequency
     * @param stepSeconds how long each stays
     * @param levelDbfs of its RMS value and peak, at most 0
     */
    record SteppedSweep(double fromHz, double toHz, int stepsPerOctave, double stepSeconds, double levelDbfs)
            implements TestSignal {
        /** Checks the ranges. */
        public SteppedSweep {
            Checks.span(fromHz, toHz);
            Checks.within("stepsPerOctave", stepsPerOctave, 1, 48);
            Checks.within("stepSeconds", stepSeconds, 0.01, 600);
            Checks.common(levelDbfs, stepSeconds * steps(fromHz, toHz, stepsPerOctave));
        }

        private static int steps(double fromHz, double toHz, int stepsPerOctave) {
            double octaves = Math.abs(Math.log(toHz / fromHz)) / Math.log(2);
            return 1 + (int) Math.max(1, Math.rint(octaves * stepsPerOctave));
        }

        /** Returns the frequencies in their order, in hertz. */
        public List<Double> frequenciesHz() {
            int steps = steps(fromHz, toHz, stepsPerOctave);
            List<Double> frequencies = new ArrayList<>();
            for (int i = 0; i < steps; i++) {
                frequencies.add(fromHz * Math.pow(toHz / fromHz, (double) i / (steps - 1)));
            }
            return List.copyOf(frequencies);
        }

        @Override
        public double durationSeconds() {
            return stepSeconds * steps(fromHz, toHz, stepsPerOctave);
        }

        @Override
        public double highestHz() {
            return Math.max(fromHz, toHz);
        }

        @Override
        public SteppedSweep lowered(double db) {
            return new SteppedSweep(fromHz, toHz, stepsPerOctave, stepSeconds, Checks.lower(levelDbfs, db));
        }
    }

    /**
     * A sine whose frequency rises (or falls) by the same number of octaves in each second: sin(2 pi f1 T / L (e^(L t / T) - 1)) with
     * L = ln(f2 / f1) (A. Farina, 108th AES Convention (2000), paper 5093), faded in and out by half a cosine.
     *
     * @param fromHz the frequency at the beginning
     * @param toHz the frequency at the end, different from the first
     * @param levelDbfs of the sine between the fades, at most 0
     * @param durationSeconds above zero, fades included
     * @param fadeInSeconds 0 or above
     * @param fadeOutSeconds 0 or above; both fades together at most the duration
     */
    record LogSweep(
            double fromHz,
            double toHz,
            double levelDbfs,
            double durationSeconds,
            double fadeInSeconds,
            double fadeOutSeconds)
            implements TestSignal {
        /** Checks the ranges. */
        public LogSweep {
            Checks.span(fromHz, toHz);
            Checks.common(levelDbfs, durationSeconds);
            Checks.within("fadeInSeconds", fadeInSeconds, 0, durationSeconds);
            Checks.within("fadeOutSeconds", fadeOutSeconds, 0, durationSeconds - fadeInSeconds);
        }

        @Override
        public double highestHz() {
            return Math.max(fromHz, toHz);
        }

        @Override
        public LogSweep lowered(double db) {
            return new LogSweep(
                    fromHz, toHz, Checks.lower(levelDbfs, db), durationSeconds, fadeInSeconds, fadeOutSeconds);
        }
    }

    /**
     * A sine that is loud for a moment and low or off for the rest of each period, without a phase step. CTA-490-A has 20 ms in each 500 ms, and
     * -20 dB between.
     *
     * @param frequencyHz above zero
     * @param levelDbfs of the sine while it is loud, at most 0
     * @param pattern timing and low level
     * @param durationSeconds above zero
     */
    record ToneBursts(double frequencyHz, double levelDbfs, BurstPattern pattern, double durationSeconds)
            implements TestSignal {
        /** 20 ms in each 500 ms, -20 dB between. */
        public static final BurstPattern USUAL = new BurstPattern(0.02, 0.5, 0.1, 0);

        /** Checks the ranges. */
        public ToneBursts {
            Checks.frequency("frequencyHz", frequencyHz);
            Checks.common(levelDbfs, durationSeconds);
            if (pattern.delaySeconds() != 0) {
                throw new IllegalArgumentException("delaySeconds must be 0, but is " + pattern.delaySeconds());
            }
            Checks.within("periodSeconds", pattern.periodSeconds(), 1e-3, LONGEST_SECONDS);
        }

        /** Returns the mean power as a ratio of the power while it is loud: D + (1 - D) r^2, with the share of time D and the low ratio r. */
        public double meanPowerRatio() {
            double share = pattern.onSeconds() / pattern.periodSeconds();
            return share + (1 - share) * pattern.lowRatio() * pattern.lowRatio();
        }

        @Override
        public double highestHz() {
            return frequencyHz;
        }

        @Override
        public ToneBursts lowered(double db) {
            return new ToneBursts(frequencyHz, Checks.lower(levelDbfs, db), pattern, durationSeconds);
        }
    }

    /**
     * Pink noise: equal power in each octave, -3.01 dB per octave at constant bandwidth, nothing outside its band. The lines of its spectrum have
     * exactly that height; their phases are random, and then changed by turns of cutting the peaks off and putting the heights right
     * (E. van der Ouderaa et al., IEEE Trans. Instrum. Meas. 37 (1988) 145-147) until the crest factor is the wanted one. What the last cut leaves
     * beside the lines is far below them. It repeats after at most 2^18 samples.
     *
     * @param levelDbfs of its RMS value; the peak lies higher by the crest factor less 3.01 dB
     * @param crestFactorDb peak over RMS, 6 to 12.5 dB; plain noise has about 13 dB
     * @param lowHz lower end of the band
     * @param highHz upper end, at least an octave above
     * @param seed chooses the noise; the same seed gives the same noise
     * @param durationSeconds above zero
     */
    record PinkNoise(
            double levelDbfs, double crestFactorDb, double lowHz, double highHz, long seed, double durationSeconds)
            implements TestSignal {
        /** Checks the ranges. */
        public PinkNoise {
            Checks.common(levelDbfs, durationSeconds);
            Checks.within("crestFactorDb", crestFactorDb, 6, 12.5);
            Checks.span(lowHz, highHz);
            Checks.within("highHz", highHz, 2 * lowHz, Checks.HIGHEST_HZ);
        }

        @Override
        public double highestHz() {
            return highHz;
        }

        @Override
        public PinkNoise lowered(double db) {
            return new PinkNoise(Checks.lower(levelDbfs, db), crestFactorDb, lowHz, highHz, seed, durationSeconds);
        }
    }

    /**
     * Two sines for what an amplifier makes of them together (IEC 60268-3): a low and a high one, 4 to 1, for modulation distortion; two close
     * ones of the same height for difference-frequency distortion.
     *
     * @param lowHz above zero
     * @param highHz above the lower one
     * @param lowToHighRatio the amplitude of the lower one over that of the higher one, 0.01 to 100
     * @param levelDbfs of the sine that has the same peak as both together, at most 0
     * @param durationSeconds above zero
     */
    record TwoTone(double lowHz, double highHz, double lowToHighRatio, double levelDbfs, double durationSeconds)
            implements TestSignal {
        /** Checks the ranges. */
        public TwoTone {
            Checks.span(lowHz, highHz);
            if (highHz < lowHz) {
                throw new IllegalArgumentException(
                        "highHz must be above lowHz, but they are " + highHz + " and " + lowHz);
            }
            Checks.within("lowToHighRatio", lowToHighRatio, 0.01, 100);
            Checks.common(levelDbfs, durationSeconds);
        }

        @Override
        public double highestHz() {
            return highHz;
        }

        @Override
        public TwoTone lowered(double db) {
            return new TwoTone(lowHz, highHz, lowToHighRatio, Checks.lower(levelDbfs, db), durationSeconds);
        }
    }

    /**
     * The warm-up before ratings are measured: a sine at an eighth of rated power, 10 log10(1/8) = -9.03 dB, as 16 CFR 432.3 wants it for an hour
     * at 1 kHz.
     *
     * @param frequencyHz above zero
     * @param ratedLevelDbfs the level that makes the amplifier deliver its rated power, at most 0
     * @param durationSeconds above zero; an hour is common
     */
    record WarmUp(double frequencyHz, double ratedLevelDbfs, double durationSeconds) implements TestSignal {
        /** An eighth of the power, in decibels. */
        public static final double EIGHTH_DB = 10 * Math.log10(1.0 / 8);

        /** Checks the ranges. */
        public WarmUp {
            Checks.frequency("frequencyHz", frequencyHz);
            Checks.common(ratedLevelDbfs, durationSeconds);
        }

        @Override
        public double levelDbfs() {
            return ratedLevelDbfs + EIGHTH_DB;
        }

        @Override
        public double highestHz() {
            return frequencyHz;
        }

        @Override
        public WarmUp lowered(double db) {
            return new WarmUp(frequencyHz, Checks.lower(ratedLevelDbfs, db), durationSeconds);
        }
    }
}
