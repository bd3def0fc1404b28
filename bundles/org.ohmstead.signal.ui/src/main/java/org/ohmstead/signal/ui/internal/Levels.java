// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import org.ohmstead.workbench.look.Numbers;

/** Levels and frequencies as text. */
final class Levels {
    private Levels() {}

    /** Level of a ratio in dB, or what stands for silence. */
    static double ofRatio(double ratio) {
        return ratio > 0 ? Math.max(SpectrumTrace.LEAST_DBV, 20 * Math.log10(ratio)) : SpectrumTrace.LEAST_DBV;
    }

    static String decibels(double level) {
        return level <= SpectrumTrace.LEAST_DBV ? Texts.say("harmonics.none") : Numbers.format("%.2f", level);
    }

    static String hertz(double frequencyHz) {
        return frequencyHz < 1000
                ? Numbers.format("%.2f Hz", frequencyHz)
                : Numbers.format("%.4f kHz", frequencyHz / 1000);
    }
}
