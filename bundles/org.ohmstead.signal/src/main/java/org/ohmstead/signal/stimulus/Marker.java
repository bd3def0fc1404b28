// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

/**
 * A marker that a recording is aligned by: half a second of a sine from 40 Hz to 6 kHz, so that something of it passes through any amplifier, from
 * bass to full range. The one at the end runs backwards in time, so that the two cannot be mistaken.
 */
final class Marker {
    static final double SECONDS = 0.5;
    private static final double FROM_HZ = 40;
    private static final double TO_HZ = 6_000;
    private static final double FADE_SECONDS = 0.02;
    private static final double NATURAL = Math.log(TO_HZ / FROM_HZ);

    private final boolean end;

    Marker(boolean end) {
        this.end = end;
    }

    /** The value at a time from its beginning, -1 to 1; 0 outside. */
    double at(double seconds) {
        if (!(seconds >= 0 && seconds <= SECONDS)) {
            return 0;
        }
        double time = end ? SECONDS - seconds : seconds;
        double cycles = FROM_HZ * SECONDS / NATURAL * Math.expm1(NATURAL * time / SECONDS);
        double edge = Math.min(seconds, SECONDS - seconds) / FADE_SECONDS;
        double fade = edge < 1 ? 0.5 - 0.5 * Math.cos(Math.PI * edge) : 1;
        return fade * Math.sin(2 * Math.PI * (cycles - Math.floor(cycles)));
    }

    /** The samples at a rate. */
    double[] samples(double sampleRateHz) {
        double[] samples = new double[(int) Math.ceil(SECONDS * sampleRateHz)];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = at(i / sampleRateHz);
        }
        return samples;
    }
}
