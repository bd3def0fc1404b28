// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Plain WAV files that are longer than their 32-bit sizes can state; the disk holds only what is written of them. */
class WrappedWavTest {
    private static final long SIZES = 1L << 32;
    private static final int HEADER_BYTES = 44;
    private static final int FRAME_BYTES = 4;

    @TempDir
    private Path folder;

    /** Writes a header of two channels of 16 bits at 48 kHz, and makes the file so long. */
    private Path file(String outer, long trueDataBytes, long statedDataBytes, long bytesBehind) throws IOException {
        Path file = folder.resolve("long.wav");
        ByteBuffer header = ByteBuffer.allocate(HEADER_BYTES).order(ByteOrder.LITTLE_ENDIAN);
        header.put(outer.getBytes(StandardCharsets.US_ASCII))
                .putInt((int) (statedDataBytes + HEADER_BYTES - 8))
                .put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII))
                .putInt(16)
                .putShort((short) 1)
                .putShort((short) 2)
                .putInt(48_000)
                .putInt(48_000 * FRAME_BYTES)
                .putShort((short) FRAME_BYTES)
                .putShort((short) 16)
                .put("data".getBytes(StandardCharsets.US_ASCII))
                .putInt((int) statedDataBytes);
        try (FileChannel channel = FileChannel.open(
                file,
                StandardOpenOption.CREATE,
                StandardOpenOption.TRUNCATE_EXISTING,
                StandardOpenOption.SPARSE,
                StandardOpenOption.WRITE)) {
            channel.write(header.flip());
            channel.write(ByteBuffer.allocate(1), HEADER_BYTES + trueDataBytes + bytesBehind - 1);
        }
        return file;
    }

    private String refusal(Path file) {
        CaptureException whole = assertThrows(CaptureException.class, () -> CaptureFile.read(file, new double[] {1}));
        CaptureException piecewise =
                assertThrows(CaptureException.class, () -> StoredCapture.open(file, new double[] {1}));
        assertEquals(whole.getMessage(), piecewise.getMessage());
        return whole.getMessage();
    }

    @Test
    void aSizeWithoutItsUpperBitsIsNotBelieved() throws Exception {
        for (long wraps = 1; wraps <= 2; wraps++) {
            String said = refusal(file("RIFF", wraps * SIZES + 400, 400, 0));
            assertTrue(
                    said.contains("states 400 bytes of samples, while " + (wraps * SIZES + 400) + " bytes follow"),
                    said);
            assertTrue(said.contains("Record it as RF64 or BW64"), said);
        }
    }

    @Test
    void neitherWithOtherChunksBehindTheSamples() throws Exception {
        String said = refusal(file("RIFF", SIZES + 400, 400, 1000));
        assertTrue(said.contains("states 400 bytes"), said);
    }

    @Test
    void norOneOfJustSoManyBytesThatNothingIsLeft() throws Exception {
        String said = refusal(file("RIFF", SIZES, 0, 0));
        assertTrue(said.contains("data size is 0 although " + SIZES + " bytes follow"), said);
    }

    @Test
    void whatTheHeaderCanStateIsRead() throws Exception {
        long most = SIZES - 4 * FRAME_BYTES;
        WavLayout layout = WavReader.layout(file("RIFF", most, most, 0));
        assertEquals(most / FRAME_BYTES, layout.frames());
        assertEquals(100, WavReader.layout(file("RIFF", 400, 400, 1000)).frames(), "with something behind it");
    }
}
