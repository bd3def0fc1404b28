// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.io.IOException;
import java.util.List;
import org.ohmstead.signal.SampleFormat;

/** Where signals are played, or what stands in for it in a test. */
public interface SoundOutput {
    /** Returns the names of the outputs. */
    List<String> devices();

    /**
     * Opens an output.
     *
     * @param device a part of its name; empty for the usual one
     * @param sampleRateHz samples per second
     * @param channels how many channels
     * @throws IOException if there is none with such a format, or it is in use
     */
    Feed open(String device, int sampleRateHz, int channels) throws IOException;

    /** An output that is open. */
    interface Feed extends AutoCloseable {
        /** Returns how it wants its samples. */
        SampleFormat format();

        /**
         * Plays frames after those before; waits until it has taken them, or was stopped.
         *
         * @throws IOException if it plays no more
         */
        void write(byte[] frames) throws IOException;

        /** Falls silent now, from any thread, and takes nothing any more. */
        void stopAtOnce();

        /** Plays to the end what was taken, unless it was stopped, and lets the output go. */
        @Override
        void close();
    }
}
