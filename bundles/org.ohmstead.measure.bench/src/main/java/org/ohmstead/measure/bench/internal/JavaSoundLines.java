// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.io.IOException;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;
import org.ohmstead.measure.bench.SoundLines;
import org.ohmstead.signal.stimulus.SoundCards;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

/** The computer's own sound cards. */
public final class JavaSoundLines implements SoundLines {
    private static final double BUFFER_SECONDS = 0.05;

    /** Finds them when they are asked for. */
    public JavaSoundLines() {
        // keeps nothing
    }

    @Override
    public boolean plays(String device, AudioFormat format) {
        return SoundCards.find(device, new DataLine.Info(SourceDataLine.class, format))
                .isPresent();
    }

    @Override
    public boolean records(String device, AudioFormat format) {
        return SoundCards.find(device, new DataLine.Info(TargetDataLine.class, format))
                .isPresent();
    }

    @Override
    public Player openPlayer(String device, AudioFormat format) throws IOException {
        SourceDataLine line = (SourceDataLine) SoundCards.line(device, new DataLine.Info(SourceDataLine.class, format));
        try {
            line.open(format, bufferOctets(format));
        } catch (LineUnavailableException e) {
            throw new LineFailure("outputUsed", e);
        }
        return new LoopPlayer(line);
    }

    @Override
    public Taker openTaker(String device, AudioFormat format) throws IOException {
        TargetDataLine line = (TargetDataLine) SoundCards.line(device, new DataLine.Info(TargetDataLine.class, format));
        try {
            line.open(format);
        } catch (LineUnavailableException e) {
            throw new LineFailure("inputUsed", e);
        }
        return new LineTaker(line);
    }

    private static int bufferOctets(AudioFormat format) {
        return (int) (BUFFER_SECONDS * format.getSampleRate()) * format.getFrameSize();
    }

    /** What goes wrong with a line; it comes into a sentence about the sound card. */
    private static final class LineFailure extends IOException implements Said.Failure {
        private static final long serialVersionUID = 1L;

        private final Said said;

        LineFailure(String key, Exception cause, Object... arguments) {
            this(Said.of(Messages.of(JavaSoundLines.class), "problem.lines." + key, arguments), cause);
        }

        private LineFailure(Said said, Exception cause) {
            super(said.shown(), cause);
            this.said = said;
        }

        @Override
        public Said said() {
            return said;
        }
    }

    /** Reads a line from now on: what it had collected before is thrown away. */
    private static final class LineTaker implements Taker {
        private static final int PIECE_SHARE = 20;

        private final TargetDataLine line;

        LineTaker(TargetDataLine line) {
            this.line = line;
        }

        @Override
        public byte[] take(int octets) throws IOException, InterruptedException {
            byte[] taken = new byte[octets];
            line.flush();
            line.start();
            int piece = Math.max(1, (int) line.getFormat().getSampleRate() / PIECE_SHARE)
                    * line.getFormat().getFrameSize();
            int filled = 0;
            while (filled < octets) {
                if (Thread.interrupted()) {
                    line.stop();
                    throw new InterruptedException("The recording was interrupted.");
                }
                int read = line.read(taken, filled, Math.min(piece, octets - filled));
                if (read <= 0) {
                    throw new LineFailure("inputEnded", null, filled, octets);
                }
                filled += read;
            }
            line.stop();
            return taken;
        }

        @Override
        public void close() {
            line.close();
        }
    }
}
