// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench;

import java.io.IOException;
import java.util.Optional;
import javax.sound.sampled.AudioFormat;

/** A sound card's inputs and outputs, or what stands in for them in a test. */
public interface SoundLines {
    /** Returns whether an output takes a format. */
    boolean plays(String device, AudioFormat format);

    /** Returns whether an input gives a format. */
    boolean records(String device, AudioFormat format);

    /**
     * Opens an output.
     *
     * @param device a part of its name; empty for the usual one
     * @param format one that it takes
     * @throws IOException when it is not there or in use
     */
    Player openPlayer(String device, AudioFormat format) throws IOException;

    /**
     * Opens an input.
     *
     * @param device a part of its name; empty for the usual one
     * @param format one that it gives
     * @throws IOException when it is not there or in use
     */
    Taker openTaker(String device, AudioFormat format) throws IOException;

    /** Returns the first of some formats that a pair of devices can do; empty when there is none. */
    default Optional<AudioFormat> common(String output, String input, Iterable<AudioFormat> wanted) {
        for (AudioFormat format : wanted) {
            if (plays(output, format) && records(input, format)) {
                return Optional.of(format);
            }
        }
        return Optional.empty();
    }

    /** An output that is open. Any thread may silence it. */
    interface Player extends AutoCloseable {
        /** Plays a piece over and over without a gap until another is played. */
        void loop(byte[] frames) throws IOException;

        /** Plays nothing from now on. */
        void silence();

        @Override
        void close();
    }

    /** An input that is open. */
    interface Taker extends AutoCloseable {
        /**
         * Records anew from now on.
         *
         * @param octets how many
         * @throws IOException when the input ended before that
         * @throws InterruptedException when the wait was ended
         */
        byte[] take(int octets) throws IOException, InterruptedException;

        @Override
        void close();
    }
}
