// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

/** Tells the kind of a signal that was made otherwise than by the settings of its kind. */
final class Descriptions {
    private static final double CLOSE_OCTAVES_RATIO = 2;

    private Descriptions() {}

    static SignalKind kind(TestSignal signal) {
        if (signal instanceof TestSignal.Sine) {
            return SignalKind.SINE;
        }
        if (signal instanceof TestSignal.WarmUp) {
            return SignalKind.WARM_UP;
        }
        if (signal instanceof TestSignal.MultiTone) {
            return SignalKind.MULTI_TONE;
        }
        if (signal instanceof TestSignal.SteppedSweep) {
            return SignalKind.STEPPED_SWEEP;
        }
        if (signal instanceof TestSignal.LogSweep) {
            return SignalKind.LOG_SWEEP;
        }
        if (signal instanceof TestSignal.ToneBursts) {
            return SignalKind.TONE_BURSTS;
        }
        if (signal instanceof TestSignal.TwoTone pair) {
            boolean close = pair.highHz() < CLOSE_OCTAVES_RATIO * pair.lowHz();
            return close ? SignalKind.DIFFERENCE_PAIR : SignalKind.MODULATION_PAIR;
        }
        return SignalKind.PINK_NOISE;
    }
}
