// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.OptionalDouble;
import org.ohmstead.signal.ChannelAnalysis;

/**
 * One level of a step in one channel, analysed.
 *
 * @param driveDb level in dB relative to the source's full output
 * @param supplyVolts direct volts at the amplifier's terminals
 * @param supplyAmps supply current in amperes, when it was read
 * @param captureSha256 hash of the capture
 * @param powerWatts output power in watts: inside the burst when the stimulus is a burst
 * @param analysis everything else that the capture shows
 */
public record AnalyzedLevel(
        double driveDb,
        double supplyVolts,
        OptionalDouble supplyAmps,
        String captureSha256,
        double powerWatts,
        ChannelAnalysis analysis) {}
