// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import java.util.function.DoubleUnaryOperator;
import org.ohmstead.signal.Waveform;

/** Sounds that are known exactly. */
final class SoundWaves {
    static final double RATE_HZ = 48_000;

    private SoundWaves() {}

    static Waveform of(double seconds, DoubleUnaryOperator pascalsAt) {
        double[] samples = new double[(int) Math.round(seconds * RATE_HZ)];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = pascalsAt.applyAsDouble(i / RATE_HZ);
        }
        return Waveform.of(RATE_HZ, samples);
    }

    /** A sine of a level, that begins and ends at a zero. */
    static Waveform tone(double seconds, double frequencyHz, double levelDb) {
        return burst(seconds, frequencyHz, levelDb, 0, seconds);
    }

    static Waveform burst(double seconds, double frequencyHz, double levelDb, double from, double length) {
        double peak = Math.sqrt(2) * 20e-6 * Math.pow(10, levelDb / 20);
        return of(
                seconds,
                t -> t >= from && t < from + length - 1e-9
                        ? peak * Math.sin(2 * Math.PI * frequencyHz * (t - from))
                        : 0);
    }
}
