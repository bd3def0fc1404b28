// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/** Reads one WAV file. Sizes stated in the file are believed only as far as the file is long. */
final class WavReader {
    private static final int MOST_CHANNELS = 32;
    private static final long MOST_SAMPLES = 1L << 28;
    private static final long UNKNOWN_SIZE = 0xFFFFFFFFL;
    /** So many sizes of 32 bits there are. */
    private static final long SIZES = 1L << 32;

    private static final int BLOCK_FRAMES = 4096;
    /** The last 14 bytes of the sub-format identifier of an extensible format, after its two bytes of format tag. */
    private static final byte[] SUBFORMAT_TAIL = {
        0, 0, 0, 0, 0x10, 0, (byte) 0x80, 0, 0, (byte) 0xAA, 0, 0x38, (byte) 0x9B, 0x71
    };

    private final Path file;
    private final FileChannel channel;
    private final long fileSize;
    private ByteBuffer format;
    private boolean wide;
    private long outerSize;
    private long wideDataSize = -1;
    private long dataPosition = -1;
    private long dataSize;

    private WavReader(Path file, FileChannel channel) throws IOException {
        this.file = file;
        this.channel = channel;
        this.fileSize = channel.size();
    }

    static Capture read(Path file, double[] voltsPerFullScale) throws CaptureException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            return new WavReader(file, channel).capture(voltsPerFullScale);
        } catch (IOException e) {
            throw FileFailure.reading(file, e);
        }
    }

    /** Says what is wrong; the text's first argument is the file. */
    private CaptureException broken(String key, Object... arguments) {
        return new CaptureException(Texts.said(
                key,
                Stream.concat(Stream.of(file.getFileName()), Arrays.stream(arguments))
                        .toArray()));
    }

    /** Reads what the header of a file says of its samples. */
    static WavLayout layout(Path file) throws CaptureException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            return new WavReader(file, channel).layout();
        } catch (IOException e) {
            throw FileFailure.reading(file, e);
        }
    }

    private WavLayout layout() throws IOException, CaptureException {
        readOuterHeader();
        scanChunks();
        if (dataPosition < 0) {
            throw broken("wav.noData");
        }
        if (format == null) {
            throw broken("wav.noFormat");
        }
        int channels = format.getShort(2) & 0xFFFF;
        long sampleRate = format.getInt(4) & 0xFFFFFFFFL;
        WavFormat sampleFormat = sampleFormat(channels, sampleRate);
        return new WavLayout(sampleRate, channels, sampleFormat, dataPosition, frames(channels * sampleFormat.bytes()));
    }

    private Capture capture(double[] scales) throws IOException, CaptureException {
        WavLayout layout = layout();
        int channels = layout.channels();
        long frames = layout.frames();
        if (!fitsMemory(frames * channels)) {
            throw broken("wav.tooLarge", frames, channels);
        }
        double[][] samples =
                samples(layout.format(), channels, (int) frames, WavFile.scalesFor(file, channels, scales));
        List<Waveform> waveforms = new ArrayList<>();
        for (double[] values : samples) {
            waveforms.add(Waveform.wrapFinite(layout.sampleRateHz(), values));
        }
        return new Capture(waveforms, String.valueOf(file.getFileName()), layout.text());
    }

    /** Whether a number of samples can be held, with room for their analysis. */
    static boolean fitsMemory(long samples) {
        return samples <= Math.min(MOST_SAMPLES, Runtime.getRuntime().maxMemory() / (2 * Double.BYTES));
    }

    private ByteBuffer bytes(long position, int count) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(count).order(ByteOrder.LITTLE_ENDIAN);
        while (buffer.hasRemaining()) {
            if (channel.read(buffer, position + buffer.position()) < 0) {
                throw new EOFException(Texts.say("wav.shrank"));
            }
        }
        return buffer.flip();
    }

    private static String identifier(ByteBuffer buffer, int index) {
        return new String(buffer.array(), index, 4, StandardCharsets.ISO_8859_1);
    }

    private void readOuterHeader() throws IOException, CaptureException {
        if (fileSize < 12) {
            throw broken("wav.tooShort", fileSize);
        }
        ByteBuffer header = bytes(0, 12);
        String outer = identifier(header, 0);
        // RF64 by EBU Tech 3306, BW64 by Recommendation ITU-R BS.2088: the sizes stand in a chunk of their own.
        wide = "RF64".equals(outer) || "BW64".equals(outer);
        if (!(wide || "RIFF".equals(outer)) || !"WAVE".equals(identifier(header, 8))) {
            throw broken("wav.notWav");
        }
        outerSize = header.getInt(4) & 0xFFFFFFFFL;
    }

    private void scanChunks() throws IOException, CaptureException {
        long position = 12;
        while (position + 8 <= fileSize) {
            ByteBuffer header = bytes(position, 8);
            String id = identifier(header, 0);
            long size = header.getInt(4) & 0xFFFFFFFFL;
            long body = position + 8;
            if ("ds64".equals(id) && size >= 24 && body + 24 <= fileSize) {
                wideDataSize = bytes(body, 24).getLong(8);
            } else if ("fmt ".equals(id)) {
                readFormat(body, size);
            } else if ("data".equals(id) && dataPosition < 0) {
                size = dataChunk(body, size);
            }
            boolean allKnown = format != null && dataPosition >= 0;
            if (allKnown || size < 0 || size > fileSize - body) {
                return;
            }
            position = body + size + (size & 1);
        }
    }

    private void readFormat(long body, long size) throws IOException, CaptureException {
        if (format != null) {
            return;
        }
        if (size < 16 || body + size > fileSize) {
            throw broken("wav.formatSize", size);
        }
        format = bytes(body, (int) Math.min(size, 64));
    }

    private long dataChunk(long body, long statedSize) throws CaptureException {
        long size = statedSize;
        if (wide && statedSize == UNKNOWN_SIZE) {
            size = wideDataSize;
            if (size < 0) {
                throw broken("wav.wideSize");
            }
        } else if (statedSize == UNKNOWN_SIZE || (statedSize == 0 && unfinished(body))) {
            throw broken(statedSize == 0 ? "wav.unfinished.zero" : "wav.unfinished.unknown", fileSize - body);
        } else if (!wide && fileSize - body - statedSize >= SIZES) {
            // A chunk's size is 32 bits wide, so that of a longer one is written without its upper bits. Which of the
            // bytes that follow are samples is not known then: there may be other chunks behind them.
            throw broken("wav.wrapped", statedSize, fileSize - body);
        }
        dataPosition = body;
        dataSize = size;
        return size;
    }

    /** Whether bytes follow an empty data chunk that the outer size does not know of. */
    private boolean unfinished(long body) {
        return fileSize > body && (outerSize == 0 || outerSize == UNKNOWN_SIZE || outerSize + 8 <= body);
    }

    private int formatTag() throws CaptureException {
        int tag = format.getShort(0) & 0xFFFF;
        if (tag != 0xFFFE) {
            return tag;
        }
        if (format.capacity() < 40 || !Arrays.equals(Arrays.copyOfRange(format.array(), 26, 40), SUBFORMAT_TAIL)) {
            throw broken("wav.extensible");
        }
        return format.getShort(24) & 0xFFFF;
    }

    private WavFormat sampleFormat(int channels, long sampleRate) throws CaptureException {
        int tag = formatTag();
        int frameBytes = format.getShort(12) & 0xFFFF;
        int bits = format.getShort(14) & 0xFFFF;
        if (channels < 1 || channels > MOST_CHANNELS || sampleRate < 1) {
            throw broken("wav.states", channels, sampleRate, MOST_CHANNELS);
        }
        boolean integer = tag == 1 && (bits == 16 || bits == 24 || bits == 32);
        boolean floating = tag == 3 && (bits == 32 || bits == 64);
        if (!integer && !floating) {
            throw broken("wav.samples", tag, bits);
        }
        if (frameBytes != channels * bits / 8) {
            throw broken("wav.contradicts", channels, bits, channels * bits / 8, frameBytes);
        }
        return new WavFormat(floating, bits);
    }

    private long frames(int frameBytes) throws CaptureException {
        long there = fileSize - dataPosition;
        if (dataSize > there) {
            throw broken("wav.cutShort", dataSize / frameBytes, there / frameBytes);
        }
        if (dataSize < frameBytes) {
            throw broken("wav.noSamples");
        }
        if (dataSize % frameBytes != 0) {
            throw broken("wav.damaged", dataSize, frameBytes);
        }
        return dataSize / frameBytes;
    }

    private void requireFinite(double[][] samples, int start, int count) throws CaptureException {
        for (int i = start; i < start + count; i++) {
            for (int c = 0; c < samples.length; c++) {
                if (!Double.isFinite(samples[c][i])) {
                    throw broken("wav.noNumber", i + 1, c + 1);
                }
            }
        }
    }

    private double[][] samples(WavFormat sampleFormat, int channels, int frames, double[] scales)
            throws IOException, CaptureException {
        double[][] samples = new double[channels][frames];
        int frameBytes = channels * sampleFormat.bytes();
        for (int start = 0; start < frames; start += BLOCK_FRAMES) {
            int count = Math.min(BLOCK_FRAMES, frames - start);
            ByteBuffer block = bytes(dataPosition + (long) start * frameBytes, count * frameBytes);
            for (int c = 0; c < channels; c++) {
                sampleFormat.read(block, c * sampleFormat.bytes(), frameBytes, scales[c], samples[c], start, count);
            }
            if (sampleFormat.floating()) {
                requireFinite(samples, start, count);
            }
        }
        return samples;
    }
}
