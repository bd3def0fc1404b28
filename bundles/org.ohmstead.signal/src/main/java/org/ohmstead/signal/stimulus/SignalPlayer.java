// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.io.IOException;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.SampleFormat;
import org.ohmstead.signal.WavStream;
import org.ohmstead.units.text.Messages;

/**
 * Plays signals by a sound card. The volume begins 60 dB below the wanted one and comes up by a fade of so many decibels per second; it stops at
 * once. One signal at a time; any thread may call.
 */
public final class SignalPlayer implements AutoCloseable {
    private static final double LOWEST_DB = -60;
    private static final int PIECES_PER_SECOND = 100;

    private final SoundOutput output;
    private final Object lock = new Object();
    private Run current;

    /** Makes a player that plays nothing yet. */
    public SignalPlayer(SoundOutput output) {
        this.output = Objects.requireNonNull(output, "output");
    }

    /**
     * How a signal is played.
     *
     * @param device a part of the output's name; empty for the usual one
     * @param channels which channels carry it
     * @param volumeDb how far the signal is turned down in the end, -100 to 0; 0 plays it at its own level
     * @param fadeSeconds how long the volume takes to come up by 60 dB, 0.5 to 60
     * @param repeat whether it is played over and over
     */
    public record Order(String device, ChannelUse channels, double volumeDb, double fadeSeconds, boolean repeat) {
        /** Checks the ranges. */
        public Order {
            Objects.requireNonNull(device, "device");
            Objects.requireNonNull(channels, "channels");
            Checks.within("volumeDb", volumeDb, -100, 0);
            Checks.within("fadeSeconds", fadeSeconds, 0.5, 60);
        }
    }

    /** One signal that is being played. */
    private static final class Run {
        private final SoundOutput.Feed feed;
        private volatile boolean stopped;
        private volatile double wantedDb;

        Run(SoundOutput.Feed feed, double wantedDb) {
            this.feed = feed;
            this.wantedDb = wantedDb;
        }
    }

    /**
     * Plays a signal from its beginning; what was played before stops.
     *
     * @param stimulus what to play
     * @param ended called on the player's thread when it is over: with the sentence why it failed, or empty when it came to its end or was
     *     stopped
     * @throws CaptureException if the output cannot be opened
     * @throws IllegalArgumentException if the signal reaches beyond full scale
     */
    public void play(Stimulus stimulus, Order order, Consumer<Optional<String>> ended) throws CaptureException {
        if (!stimulus.usable()) {
            throw new IllegalArgumentException("the signal must not reach beyond full scale");
        }
        synchronized (lock) {
            stop();
            SoundOutput.Feed feed;
            try {
                feed = output.open(
                        order.device(),
                        stimulus.sampleRateHz(),
                        order.channels().count());
            } catch (IOException e) {
                throw new CaptureException(
                        Messages.of(SignalPlayer.class)
                                .text(
                                        "play.unavailable",
                                        stimulus.sampleRateHz(),
                                        order.channels().count(),
                                        String.valueOf(e.getMessage())),
                        e);
            }
            Run run = new Run(feed, order.volumeDb());
            current = run;
            Thread thread = new Thread(() -> pump(run, stimulus, order, ended), "Ohmstead test signal");
            thread.setDaemon(true);
            thread.start();
        }
    }

    /**
     * Turns the volume up or down while it plays: up by the fade, down at once.
     *
     * @param volumeDb -100 to 0
     */
    public void setVolumeDb(double volumeDb) {
        Checks.within("volumeDb", volumeDb, -100, 0);
        synchronized (lock) {
            if (current != null) {
                current.wantedDb = volumeDb;
            }
        }
    }

    /** Falls silent at once. */
    public void stop() {
        synchronized (lock) {
            if (current != null) {
                current.stopped = true;
                current.feed.stopAtOnce();
                current = null;
            }
        }
    }

    /** Returns whether something is being played. */
    public boolean playing() {
        synchronized (lock) {
            return current != null;
        }
    }

    @Override
    public void close() {
        stop();
    }

    private void pump(Run run, Stimulus stimulus, Order order, Consumer<Optional<String>> ended) {
        Optional<String> trouble = Optional.empty();
        try (SoundOutput.Feed feed = run.feed) {
            feed(run, feed, stimulus, order);
        } catch (IOException e) {
            trouble = Optional.of(Messages.of(SignalPlayer.class).text("play.failed", String.valueOf(e.getMessage())));
        } finally {
            synchronized (lock) {
                current = current == run ? null : current;
            }
        }
        ended.accept(trouble);
    }

    private static void feed(Run run, SoundOutput.Feed feed, Stimulus stimulus, Order order) throws IOException {
        SampleFormat format = feed.format();
        int piece = Math.max(1, stimulus.sampleRateHz() / PIECES_PER_SECOND);
        double riseDb = -LOWEST_DB / order.fadeSeconds() / PIECES_PER_SECOND;
        Dither dither = new Dither(1, format.step());
        double[] block = new double[piece];
        double[][] shares = new double[order.channels().count()][piece];
        double db = run.wantedDb + LOWEST_DB;
        long at = 0;
        while (!run.stopped && (at < stimulus.frames() || order.repeat())) {
            at = at >= stimulus.frames() ? 0 : at;
            int count = (int) Math.min(piece, stimulus.frames() - at);
            stimulus.read(at, block, count);
            double next = Math.min(run.wantedDb, db + riseDb);
            for (int i = 0; i < count; i++) {
                block[i] *= Levels.ratio(db + (next - db) * i / count);
            }
            dither.add(block, count);
            for (int c = 0; c < shares.length; c++) {
                for (int i = 0; i < count; i++) {
                    shares[c][i] = order.channels().factor(c) * block[i];
                }
            }
            feed.write(WavStream.bytes(shares, count, format));
            db = next;
            at += count;
        }
    }
}
