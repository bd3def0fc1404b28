// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

/**
 * Where things lie in a file with markers, in samples from its first: silence, the start marker, a leader of a 1 kHz tone to set levels by, the
 * signal, the end marker, silence; with short silences between.
 *
 * @param sampleRateHz samples per second of the file
 * @param startMarker first sample of the start marker
 * @param leader first sample of the leader
 * @param leaderEnd the sample after its last
 * @param signal first sample of the signal
 * @param signalEnd the sample after its last
 * @param endMarker first sample of the end marker
 * @param frames length of the file
 */
public record SignalLayout(
        int sampleRateHz,
        long startMarker,
        long leader,
        long leaderEnd,
        long signal,
        long signalEnd,
        long endMarker,
        long frames) {
    /** The frequency of the leader, in hertz. */
    public static final double LEADER_HZ = 1000;

    private static final double QUIET_SECONDS = 0.5;
    private static final double GAP_SECONDS = 0.25;
    private static final double LEADER_SECONDS = 1;

    /** Checks that the parts follow one another. */
    public SignalLayout {
        boolean ordered = 0 <= startMarker
                && startMarker < leader
                && leader < leaderEnd
                && leaderEnd < signal
                && signal < signalEnd
                && signalEnd < endMarker
                && endMarker < frames;
        if (!ordered) {
            throw new IllegalArgumentException("the parts must follow one another, but begin at " + startMarker + ", "
                    + leader + ", " + signal + " and " + endMarker + " of " + frames);
        }
    }

    /** Returns the layout of a file with a signal of that length. */
    public static SignalLayout of(int sampleRateHz, long signalFrames) {
        return from(sampleRateHz, frames(QUIET_SECONDS, sampleRateHz), signalFrames);
    }

    /** The layout whose start marker begins at a sample. */
    static SignalLayout from(int rate, long startMarker, long signalFrames) {
        long gap = frames(GAP_SECONDS, rate);
        long marker = frames(Marker.SECONDS, rate);
        long leader = startMarker + marker + gap;
        long leaderEnd = leader + frames(LEADER_SECONDS, rate);
        long signal = leaderEnd + gap;
        long signalEnd = signal + signalFrames;
        long endMarker = signalEnd + gap;
        return new SignalLayout(
                rate,
                startMarker,
                leader,
                leaderEnd,
                signal,
                signalEnd,
                endMarker,
                endMarker + marker + frames(QUIET_SECONDS, rate));
    }

    private static long frames(double seconds, int rate) {
        return Math.round(seconds * rate);
    }

    /** Returns the time from the start marker to the end marker, in seconds of the player's clock. */
    public double markerDistanceSeconds() {
        return (double) (endMarker - startMarker) / sampleRateHz;
    }

    /** Returns the time from the start marker to the signal, in seconds. */
    public double signalAfterMarkerSeconds() {
        return (double) (signal - startMarker) / sampleRateHz;
    }

    /** Returns the length of the signal in seconds. */
    public double signalSeconds() {
        return (double) (signalEnd - signal) / sampleRateHz;
    }
}
