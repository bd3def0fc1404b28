// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.util.Optional;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.ClippingLimits;
import org.ohmstead.signal.ExtremaPyramid;
import org.ohmstead.signal.Waveform;

/**
 * One channel of a loaded capture.
 *
 * @param name what it is called
 * @param index its place in the capture, from 0; also tells its colour
 * @param loadKnown whether the power figures mean something
 * @param waveform its samples in volts
 * @param extrema of the samples
 * @param spectrum of the analysed stretch, or of the whole if it could not be analysed
 * @param tone what was found; empty if there is no tone
 * @param whyNot why there is no tone, as whole sentences; empty text if there is one
 */
public record LoadedChannel(
        String name,
        int index,
        boolean loadKnown,
        Waveform waveform,
        ExtremaPyramid extrema,
        SpectrumTrace spectrum,
        Optional<Tone> tone,
        String whyNot) {

    /**
     * What was found of the tone.
     *
     * @param analysis its figures
     * @param limits where its tops are cut off, if they are
     * @param fundamental its fundamental
     * @param fromSample first sample of the stretch that counts
     * @param toSample the sample after its last
     */
    public record Tone(
            ChannelAnalysis analysis,
            Optional<ClippingLimits> limits,
            FundamentalWave fundamental,
            int fromSample,
            int toSample) {}
}
