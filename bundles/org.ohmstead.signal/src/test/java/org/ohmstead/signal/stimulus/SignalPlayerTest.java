// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.SampleFormat;

class SignalPlayerTest {
    private static final int RATE = 48_000;
    private static final long DEADLINE_SECONDS = 30;

    /** Takes everything at once, up to a number of frames at which it waits until it is stopped. */
    private static final class Tape implements SoundOutput, SoundOutput.Feed {
        private final ByteArrayOutputStream taken = new ByteArrayOutputStream();
        private final CountDownLatch full = new CountDownLatch(1);
        private final CountDownLatch stopped = new CountDownLatch(1);
        private final int mostOctets;
        /** Behind the first block the tape waits for this. */
        private CountDownLatch goOn = new CountDownLatch(0);

        private Optional<String> trouble = Optional.empty();
        private volatile boolean closed;

        Tape(int mostFrames) {
            mostOctets = 2 * mostFrames;
        }

        @Override
        public List<String> devices() {
            return List.of("tape");
        }

        @Override
        public Feed open(String device, int sampleRateHz, int channels) throws IOException {
            if (device.equals("none")) {
                throw new IOException("No such output.");
            }
            assertEquals(RATE, sampleRateHz);
            assertEquals(1, channels);
            return this;
        }

        @Override
        public SampleFormat format() {
            return SampleFormat.INTEGER_16;
        }

        @Override
        public void write(byte[] frames) throws IOException {
            if (trouble.isPresent()) {
                throw new IOException(trouble.get());
            }
            taken.writeBytes(frames);
            await(goOn);
            if (taken.size() >= mostOctets) {
                full.countDown();
                await(stopped);
            }
        }

        private static void await(CountDownLatch latch) throws IOException {
            try {
                assertTrue(latch.await(DEADLINE_SECONDS, TimeUnit.SECONDS));
            } catch (InterruptedException e) {
                throw new IOException(e);
            }
        }

        @Override
        public void stopAtOnce() {
            stopped.countDown();
        }

        @Override
        public void close() {
            closed = true;
        }

        double peakDb(int fromFrame, int toFrame) {
            ByteBuffer frames = ByteBuffer.wrap(taken.toByteArray()).order(ByteOrder.LITTLE_ENDIAN);
            double peak = 0;
            for (int i = fromFrame; i < toFrame; i++) {
                peak = Math.max(peak, Math.abs(frames.getShort(2 * i) / 32768.0));
            }
            return 20 * Math.log10(peak);
        }
    }

    private static Stimulus sine(double seconds) {
        return Stimulus.of(new TestSignal.Sine(1000, -6, seconds), RATE, true);
    }

    private static SignalPlayer.Order order(double volumeDb, boolean repeat) {
        return new SignalPlayer.Order("", ChannelUse.MONO, volumeDb, 1, repeat);
    }

    private static Optional<String> over(CompletableFuture<Optional<String>> ended) throws Exception {
        return ended.get(DEADLINE_SECONDS, TimeUnit.SECONDS);
    }

    @Test
    void theVolumeComesUpByAFade() throws Exception {
        Tape tape = new Tape(Integer.MAX_VALUE / 4);
        CompletableFuture<Optional<String>> ended = new CompletableFuture<>();
        try (SignalPlayer player = new SignalPlayer(tape)) {
            player.play(sine(3), order(-10, false), ended::complete);
            assertEquals(Optional.empty(), over(ended));
            assertFalse(player.playing());
        }
        assertTrue(tape.closed);
        assertEquals(3 * RATE * 2, tape.taken.size());
        // 60 dB in a second: -76 dB at first, -46 dB after half a second, -16 dB from one second on.
        assertTrue(tape.peakDb(0, 480) < -74, "begins at " + tape.peakDb(0, 480));
        assertEquals(-46, tape.peakDb(RATE / 2 - 48, RATE / 2), 0.3);
        assertEquals(-16, tape.peakDb(RATE + 480, 2 * RATE), 0.02);
    }

    @Test
    void stoppingIsAtOnceAndReported() throws Exception {
        Tape tape = new Tape(RATE);
        CompletableFuture<Optional<String>> ended = new CompletableFuture<>();
        try (SignalPlayer player = new SignalPlayer(tape)) {
            player.play(sine(1), order(0, true), ended::complete);
            assertTrue(tape.full.await(DEADLINE_SECONDS, TimeUnit.SECONDS));
            assertTrue(player.playing());
            player.stop();
            assertFalse(player.playing());
            assertEquals(Optional.empty(), over(ended));
        }
        // Nothing more was offered after the piece of a hundredth of a second that was being taken.
        assertTrue(tape.taken.size() <= 2 * (RATE + 480), "octets " + tape.taken.size());
    }

    @Test
    void repeatingGoesOnBeyondTheEnd() throws Exception {
        Tape tape = new Tape(3 * RATE);
        CompletableFuture<Optional<String>> ended = new CompletableFuture<>();
        try (SignalPlayer player = new SignalPlayer(tape)) {
            player.play(sine(1), order(0, true), ended::complete);
            assertTrue(tape.full.await(DEADLINE_SECONDS, TimeUnit.SECONDS));
            player.stop();
            over(ended);
        }
        assertEquals(-6, tape.peakDb(2 * RATE, 3 * RATE), 0.02);
    }

    @Test
    void turningDownIsAtOnce() throws Exception {
        Tape tape = new Tape(2 * RATE);
        CompletableFuture<Optional<String>> ended = new CompletableFuture<>();
        try (SignalPlayer player = new SignalPlayer(tape)) {
            tape.goOn = new CountDownLatch(1);
            player.play(sine(10), order(0, true), ended::complete);
            player.setVolumeDb(-40);
            tape.goOn.countDown();
            assertTrue(tape.full.await(DEADLINE_SECONDS, TimeUnit.SECONDS));
            player.stop();
            over(ended);
        }
        assertEquals(-46, tape.peakDb(2 * RATE - 480, 2 * RATE), 0.3);
    }

    @Test
    void troubleIsSaidInSentences() throws Exception {
        Tape tape = new Tape(RATE);
        tape.trouble = Optional.of("Its plug was pulled.");
        CompletableFuture<Optional<String>> ended = new CompletableFuture<>();
        try (SignalPlayer player = new SignalPlayer(tape)) {
            player.play(sine(1), order(0, false), ended::complete);
            assertTrue(over(ended).orElseThrow().contains("Its plug was pulled."));
            SignalPlayer.Order none = new SignalPlayer.Order("none", ChannelUse.MONO, 0, 1, false);
            CaptureException refused =
                    assertThrows(CaptureException.class, () -> player.play(sine(1), none, ended::complete));
            assertTrue(refused.getMessage().contains("No such output."), refused.getMessage());
            assertFalse(player.playing());
        }
    }
}
