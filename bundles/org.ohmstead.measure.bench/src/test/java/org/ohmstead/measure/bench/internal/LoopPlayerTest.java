// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Proxy;
import java.util.Arrays;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.SourceDataLine;
import org.junit.jupiter.api.Test;

class LoopPlayerTest {
    private static final AudioFormat FORMAT = new AudioFormat(1000, 16, 2, true, false);

    /** A line that hands each piece over to the test, and takes no more until it was looked at. */
    private static SourceDataLine line(
            SynchronousQueue<byte[]> pieces, LinkedBlockingQueue<String> calls, AtomicBoolean open) {
        return (SourceDataLine) Proxy.newProxyInstance(
                LoopPlayerTest.class.getClassLoader(),
                new Class<?>[] {SourceDataLine.class},
                (proxy, method, arguments) -> {
                    switch (method.getName()) {
                        case "getFormat":
                            return FORMAT;
                        case "write":
                            int offset = (Integer) arguments[1];
                            int size = (Integer) arguments[2];
                            byte[] piece = Arrays.copyOfRange((byte[]) arguments[0], offset, offset + size);
                            while (open.get()) {
                                if (pieces.offer(piece, 5, TimeUnit.MILLISECONDS)) {
                                    return size;
                                }
                            }
                            return 0;
                        case "stop":
                            open.set(false);
                            break;
                        case "start":
                            open.set(true);
                            break;
                        default:
                            break;
                    }
                    calls.add(method.getName());
                    return null;
                });
    }

    @Test
    void playsAPieceWithoutAGapUntilItIsSilenced() throws Exception {
        SynchronousQueue<byte[]> pieces = new SynchronousQueue<>();
        LinkedBlockingQueue<String> calls = new LinkedBlockingQueue<>();
        AtomicBoolean open = new AtomicBoolean();
        LoopPlayer player = new LoopPlayer(line(pieces, calls, open));
        byte[] loop = new byte[4 * 25];
        for (int i = 0; i < loop.length; i++) {
            loop[i] = (byte) i;
        }
        player.loop(loop);
        byte[] heard = new byte[250];
        int filled = 0;
        while (filled < heard.length) {
            byte[] piece = pieces.poll(5, TimeUnit.SECONDS);
            int size = Math.min(piece.length, heard.length - filled);
            // A hundredth of a second at most, so that silence comes at once.
            assertTrue(piece.length <= 40);
            System.arraycopy(piece, 0, heard, filled, size);
            filled += size;
        }
        for (int i = 0; i < heard.length; i++) {
            assertEquals((byte) (i % 100), heard[i], "octet " + i);
        }
        player.silence();
        assertFalse(open.get());
        // A piece that was on its way may still come; after it nothing does.
        pieces.poll(50, TimeUnit.MILLISECONDS);
        assertNull(pieces.poll(50, TimeUnit.MILLISECONDS));
        byte[] other = new byte[8];
        Arrays.fill(other, (byte) 9);
        player.loop(other);
        assertEquals(9, pieces.poll(5, TimeUnit.SECONDS)[0]);
        player.close();
        assertTrue(calls.contains("close"));
    }

    @Test
    void keepsWholeNumbersOfAnyWidthInFrames() {
        for (int bits : new int[] {16, 24}) {
            AudioFormat format = new AudioFormat(48_000, bits, 2, true, false);
            double[][] shares = {{0, 0.5, -0.5, -1, 1.5}, {0.25, -0.25, 0.1, -0.1, -2}};
            byte[] frames = Frames.of(shares, format);
            assertEquals(5 * 2 * bits / 8, frames.length);
            double step = Math.pow(2, 1 - bits);
            double[] back = Frames.waveforms(frames, format, 2, new double[] {1, 10})
                    .get(0)
                    .toArray();
            double[] second = Frames.waveforms(frames, format, 2, new double[] {1, 10})
                    .get(1)
                    .toArray();
            assertEquals(0.5, back[1], step);
            assertEquals(-0.5, back[2], step);
            assertEquals(-1, back[3], step);
            assertEquals(1 - step, back[4], step / 10);
            assertEquals(-1, second[3], 10 * step);
            assertEquals(-10, second[4], step);
        }
    }
}
