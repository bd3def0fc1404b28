// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Locale;

/** Writes one WAV file: first beside its place, then moved there, so that a failure leaves no half file. */
final class WavWriter {
    private static final int BLOCK_FRAMES = 4096;
    private static final int HEADER_BYTES = 44;

    private WavWriter() {}

    static void write(Path file, Capture capture, WavFormat format, double[] voltsPerFullScale)
            throws CaptureException {
        double[] scales = WavFile.scalesFor(file, capture.channels().size(), voltsPerFullScale);
        long rate = Math.round(capture.sampleRateHz());
        if (rate < 1 || rate > Integer.MAX_VALUE || Math.abs(rate - capture.sampleRateHz()) > 1e-9 * rate) {
            throw new CaptureException(String.format(
                    Locale.ROOT,
                    "%s cannot be written: a WAV file needs a whole number of samples per second, but the capture has"
                            + " %s. Write another format.",
                    file.getFileName(),
                    capture.sampleRateHz()));
        }
        if (!format.floating()) {
            requireRoom(file, capture, format, scales);
        }
        long dataBytes = (long) capture.size() * scales.length * format.bytes();
        if (dataBytes + HEADER_BYTES + 1 > 0xFFFFFFFFL) {
            throw new CaptureException(file.getFileName() + " cannot be written: " + dataBytes
                    + " bytes are more than a WAV file can hold. Write a shorter part.");
        }
        Path target = file.toAbsolutePath();
        try {
            Path part = Files.createTempFile(target.getParent(), "wave", ".part");
            try {
                try (OutputStream out = Files.newOutputStream(part)) {
                    out.write(header(format, scales.length, (int) rate, dataBytes));
                    writeSamples(out, capture.channels(), format, scales);
                    if (dataBytes % 2 == 1) {
                        out.write(0);
                    }
                }
                Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (IOException e) {
            throw FileFailure.writing(file, e);
        }
    }

    private static void requireRoom(Path file, Capture capture, WavFormat format, double[] scales)
            throws CaptureException {
        double most = format.fullScale() - 1;
        for (int c = 0; c < scales.length; c++) {
            double[] samples = capture.channels().get(c).raw();
            for (int i = 0; i < samples.length; i++) {
                double whole = Math.rint(samples[i] / scales[c] * format.fullScale());
                if (whole > most || whole < -most - 1) {
                    throw new CaptureException(String.format(
                            Locale.ROOT,
                            "%s cannot be written with %s samples: sample %d of channel %d is %s V, beyond full scale"
                                    + " at %s V. Choose more volts per full scale, or floating-point samples.",
                            file.getFileName(),
                            format.text(),
                            i + 1,
                            c + 1,
                            Digits.of(samples[i], 6),
                            Digits.of(scales[c], 6)));
                }
            }
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

    private static void writeSamples(OutputStream out, List<Waveform> channels, WavFormat format, double[] scales)
            throws IOException {
        int frames = channels.get(0).size();
        ByteBuffer block = ByteBuffer.allocate(BLOCK_FRAMES * scales.length * format.bytes())
                .order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < frames; i++) {
            for (int c = 0; c < scales.length; c++) {
                double value = channels.get(c).raw()[i] / scales[c];
                format.put(block, format.floating() ? value : Math.rint(value * format.fullScale()));
            }
            if (!block.hasRemaining() || i == frames - 1) {
                out.write(block.array(), 0, block.position());
                block.clear();
            }
        }
    }
}
