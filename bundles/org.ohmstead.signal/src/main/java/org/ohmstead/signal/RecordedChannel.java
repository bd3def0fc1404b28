// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/** One channel of a capture of any length, of which a piece at a time is looked at. */
interface RecordedChannel {
    /** Samples per second, above zero. */
    double sampleRateHz();

    /** Number of samples. */
    long size();

    /**
     * Reads some samples.
     *
     * @param from the first sample
     * @param volts where they go
     * @param offset where the first goes
     * @param count how many
     * @throws CaptureException if they cannot be read, or one is no number
     */
    void read(long from, double[] volts, int offset, int count) throws CaptureException;

    /** A waveform that is held already. */
    static RecordedChannel of(Waveform waveform) {
        return new RecordedChannel() {
            @Override
            public double sampleRateHz() {
                return waveform.sampleRateHz();
            }

            @Override
            public long size() {
                return waveform.size();
            }

            @Override
            public void read(long from, double[] volts, int offset, int count) {
                System.arraycopy(waveform.raw(), Math.toIntExact(from), volts, offset, count);
            }
        };
    }
}
