// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import org.ohmstead.units.text.Messages;

/** The shape of the current that an amplifier with a sine at its output draws from the supply. */
public enum SupplyWaveform {
    /** Steady: capacitors or a converter behind them even out the sine. */
    SMOOTH(1, 1),

    /** A rectified sine: a linear stage on the supply itself, or capacitors too small for the sine's frequency. */
    RECTIFIED_SINE(Math.PI / (2 * Math.sqrt(2)), Math.PI / 2);

    private static final Messages TEXTS = Messages.of(SupplyWaveform.class);

    private final double rmsRatio;
    private final double peakRatio;

    SupplyWaveform(double rmsRatio, double peakRatio) {
        this.rmsRatio = rmsRatio;
        this.peakRatio = peakRatio;
    }

    /** Returns RMS over average: 1, or pi / (2 sqrt 2). */
    public double rmsRatio() {
        return rmsRatio;
    }

    /** Returns peak over average: 1, or pi / 2. */
    public double peakRatio() {
        return peakRatio;
    }

    /** Returns what it is, to be shown beside the figures. */
    public String words() {
        return TEXTS.text("waveform." + name());
    }
}
