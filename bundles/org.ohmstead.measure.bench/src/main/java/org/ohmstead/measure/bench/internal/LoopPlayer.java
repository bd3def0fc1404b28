// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import javax.sound.sampled.SourceDataLine;
import org.ohmstead.measure.bench.SoundLines;

/** Feeds an output line from a thread of its own, a small piece at a time, so that it falls silent at once. */
final class LoopPlayer implements SoundLines.Player {
    private static final int PIECES_PER_SECOND = 100;

    private final SourceDataLine line;
    private final Thread thread;
    private final Object lock = new Object();
    private byte[] frames = {};
    private boolean closed;

    LoopPlayer(SourceDataLine line) {
        this.line = line;
        this.thread = new Thread(this::pump, "Ohmstead sound output");
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void loop(byte[] newFrames) {
        byte[] copy = newFrames.clone();
        synchronized (lock) {
            frames = copy;
            line.flush();
            line.start();
            lock.notifyAll();
        }
    }

    @Override
    public void silence() {
        synchronized (lock) {
            frames = new byte[0];
            line.stop();
            line.flush();
        }
    }

    private void pump() {
        int piece = Math.max(1, (int) line.getFormat().getSampleRate() / PIECES_PER_SECOND)
                * line.getFormat().getFrameSize();
        byte[] current = {};
        int at = 0;
        while (true) {
            synchronized (lock) {
                while (frames.length == 0 && !closed) {
                    try {
                        lock.wait();
                    } catch (InterruptedException e) {
                        closed = true;
                    }
                }
                if (closed) {
                    return;
                }
                at = frames == current ? at : 0;
                current = frames;
            }
            int size = Math.min(piece, current.length - at);
            // A line that was stopped meanwhile takes nothing; what it did not take is offered again.
            at = (at + Math.max(0, line.write(current, at, size))) % current.length;
        }
    }

    @Override
    public void close() {
        silence();
        synchronized (lock) {
            closed = true;
            lock.notifyAll();
        }
        line.close();
    }
}
