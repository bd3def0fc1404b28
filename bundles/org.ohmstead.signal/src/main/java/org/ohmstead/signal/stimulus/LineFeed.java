// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import javax.sound.sampled.SourceDataLine;
import org.ohmstead.signal.SampleFormat;

/** An output line of the platform. */
final class LineFeed implements SoundOutput.Feed {
    private final SourceDataLine line;
    private final SampleFormat format;
    private volatile boolean stopped;

    /** Takes over an open line and starts it. */
    LineFeed(SourceDataLine line, SampleFormat format) {
        this.line = line;
        this.format = format;
        line.start();
    }

    @Override
    public SampleFormat format() {
        return format;
    }

    @Override
    public void write(byte[] frames) {
        int at = 0;
        while (at < frames.length && !stopped) {
            // A line that was stopped meanwhile takes nothing.
            at += Math.max(0, line.write(frames, at, frames.length - at));
        }
    }

    @Override
    public void stopAtOnce() {
        stopped = true;
        line.stop();
        line.flush();
    }

    @Override
    public void close() {
        if (!stopped) {
            line.drain();
        }
        line.close();
    }
}
