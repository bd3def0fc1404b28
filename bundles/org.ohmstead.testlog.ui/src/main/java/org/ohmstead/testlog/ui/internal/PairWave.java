// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import org.ohmstead.signal.ChannelAnalysis;

/**
 * The capture of a reading that lies nearest to its end point, ready to be drawn beside another.
 *
 * @param fileName what the capture was called when it was handed in
 * @param sha256 hash of its content
 * @param formatText how its samples are stored
 * @param channel the channel that was analysed
 * @param sampleRateHz samples in a second
 * @param volts all samples that are drawn
 * @param zeroSeconds where, from the first of them, the fundamental rises through zero in the stretch that counts
 * @param levelsDb level of the spectrum's bins from the first above zero on, re the fundamental
 * @param binHz distance of two bins
 * @param analysis what the tone shows
 */
record PairWave(
        String fileName,
        String sha256,
        String formatText,
        String channel,
        double sampleRateHz,
        double[] volts,
        double zeroSeconds,
        double[] levelsDb,
        double binHz,
        ChannelAnalysis analysis) {}
