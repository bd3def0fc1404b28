// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import org.ohmstead.units.files.WholeFiles;

/**
 * A WAV file that is written block by block, so that its length needs no memory. It is made beside its place and moved there when it is
 * {@linkplain #finish finished}; closed before that, it leaves nothing behind.
 */
public final class WavStream implements AutoCloseable {
    private static final int HEADER_BYTES = 44;
    private static final long MOST_BYTES = 0xFFFFFFFFL;

    private final Path file;
    private final Path part;
    private final OutputStream out;
    private final WavFormat format;
    private final int channels;
    private final long frames;
    private long written;
    private long limited;

    private WavStream(Path file, Path part, OutputStream out, WavFormat format, int channels, long frames) {
        this.file = file;
        this.part = part;
        this.out = out;
        this.format = format;
        this.channels = channels;
        this.frames = frames;
    }

    /**
     * Begins a file.
     *
     * @param file where it will stand; replaced when it is there already
     * @param sampleRateHz samples per second, 1 or above
     * @param channels 1 to 32
     * @param format how samples are stored
     * @param frames how many instants will be written, 1 or above
     * @throws CaptureException if the file cannot be written, or would be more than a WAV file can hold
     * @throws IllegalArgumentException if a number is outside its range
     */
    public static WavStream create(Path file, int sampleRateHz, int channels, SampleFormat format, long frames)
            throws CaptureException {
        if (sampleRateHz < 1 || channels < 1 || channels > 32 || frames < 1) {
            throw new IllegalArgumentException(
                    "sampleRateHz must be 1 or above, channels 1 to 32 and frames 1 or above, but are " + sampleRateHz
                            + ", " + channels + " and " + frames);
        }
        return open(file, sampleRateHz, channels, format.stored(), frames);
    }

    static WavStream open(Path file, int sampleRateHz, int channels, WavFormat format, long frames)
            throws CaptureException {
        double wanted = (double) frames * channels * format.bytes();
        if (wanted + HEADER_BYTES + 1 > MOST_BYTES) {
            throw new CaptureException(
                    Texts.said("wav.tooLong", file.getFileName(), String.format(Locale.ROOT, "%.0f", wanted)));
        }
        try {
            Path part = WholeFiles.partBeside(file.toAbsolutePath());
            OutputStream out = null;
            try {
                out = new BufferedOutputStream(Files.newOutputStream(part, StandardOpenOption.CREATE_NEW), 1 << 16);
                out.write(header(format, channels, sampleRateHz, (long) wanted));
                return new WavStream(file, part, out, format, channels, frames);
            } catch (IOException e) {
                try {
                    if (out != null) {
                        out.close();
                    }
                } finally {
                    Files.deleteIfExists(part);
                }
                throw e;
            }
        } catch (IOException e) {
            throw FileFailure.writing(file, e);
        }
    }

    private static byte[] header(WavFormat format, int channels, int rate, long dataBytes) {
        int frameBytes = channels * format.bytes();
        ByteBuffer header = ByteBuffer.allocate(HEADER_BYTES).order(ByteOrder.LITTLE_ENDIAN);
        header.put("RIFF".getBytes(StandardCharsets.US_ASCII));
        header.putInt((int) (HEADER_BYTES - 8 + dataBytes + dataBytes % 2));
        header.put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII));
        header.putInt(16).putShort((short) (format.floating() ? 3 : 1)).putShort((short) channels);
        header.putInt(rate).putInt(rate * frameBytes);
        header.putShort((short) frameBytes).putShort((short) format.bits());
        header.put("data".getBytes(StandardCharsets.US_ASCII)).putInt((int) dataBytes);
        return header.array();
    }

    /**
     * Writes the next samples. Integers are rounded to the nearest step; what lies beyond the last step becomes the last step, and is
     * {@linkplain #limited counted}.
     *
     * @param shares for each channel the samples as shares of full scale, at least {@code count}
     * @param count how many instants
     * @throws CaptureException if they cannot be written
     * @throws IllegalArgumentException if there are not as many channels as announced, or more instants
     */
    public void write(double[][] shares, int count) throws CaptureException {
        if (shares.length != channels || count < 0 || written + count > frames) {
            throw new IllegalArgumentException("shares must have " + channels + " channels and count be at most "
                    + (frames - written) + ", but are " + shares.length + " and " + count);
        }
        ByteBuffer block =
                ByteBuffer.allocate(count * channels * format.bytes()).order(ByteOrder.LITTLE_ENDIAN);
        limited += encode(block, shares, count, format);
        written += count;
        try {
            out.write(block.array(), 0, block.position());
        } catch (IOException e) {
            throw FileFailure.writing(file, e);
        }
    }

    /** Puts samples into a buffer and returns how many lay beyond the last step. */
    static long encode(ByteBuffer block, double[][] shares, int count, WavFormat format) {
        double full = format.fullScale();
        long beyond = 0;
        for (int i = 0; i < count; i++) {
            for (double[] channel : shares) {
                double value = channel[i];
                if (!format.floating()) {
                    double whole = Math.rint(value * full);
                    value = Math.max(-full, Math.min(full - 1, whole));
                    beyond += whole == value ? 0 : 1;
                }
                format.put(block, value);
            }
        }
        return beyond;
    }

    /**
     * Puts samples into bytes as a file or a sound card takes them: channels side by side, the least significant byte first.
     *
     * @param shares for each channel the samples as shares of full scale; beyond it they become the last step
     * @param count how many instants
     * @param format how samples are stored
     */
    public static byte[] bytes(double[][] shares, int count, SampleFormat format) {
        ByteBuffer block = ByteBuffer.allocate(
                        count * shares.length * format.stored().bytes())
                .order(ByteOrder.LITTLE_ENDIAN);
        encode(block, shares, count, format.stored());
        return block.array();
    }

    /** Returns how many samples lay beyond the last step of integers so far and became it. */
    public long limited() {
        return limited;
    }

    /**
     * Ends the file and moves it to its place.
     *
     * @throws CaptureException if it cannot be written
     * @throws IllegalStateException if fewer instants were written than announced
     */
    public void finish() throws CaptureException {
        if (written != frames) {
            throw new IllegalStateException(written + " instants were written, but " + frames + " were announced");
        }
        try {
            if (frames * channels * format.bytes() % 2 == 1) {
                out.write(0);
            }
            out.close();
            WholeFiles.place(part, file.toAbsolutePath());
        } catch (IOException e) {
            throw FileFailure.writing(file, e);
        }
    }

    @Override
    public void close() throws CaptureException {
        try {
            // On a full disk the stream cannot even be closed, and what there is of the file must go nevertheless.
            try {
                out.close();
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (IOException e) {
            throw FileFailure.writing(file, e);
        }
    }
}
