// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.util.List;

/**
 * What a signal is like, once its sample rate is known.
 *
 * @param rmsDbfs level of its RMS value over the whole length, in dBFS (AES17: a sine at full scale has 0)
 * @param peakDbfs level of its peak against full scale; above 0 it does not fit into integers
 * @param frequenciesHz the frequencies that it is made of, in order of time or height; the ends of a sweep or band
 * @param seamless whether its end runs into its beginning without a step, so that it can be played over and over
 */
public record StimulusFacts(double rmsDbfs, double peakDbfs, List<Double> frequenciesHz, boolean seamless) {
    /** Copies the frequencies. */
    public StimulusFacts {
        frequenciesHz = List.copyOf(frequenciesHz);
    }

    /** Returns peak over RMS, in decibels. */
    public double crestFactorDb() {
        return peakDbfs - rmsDbfs + Levels.SINE_CREST_DB;
    }
}
