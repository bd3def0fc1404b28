// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.function.DoubleConsumer;

/**
 * A capture file of any length to be analysed. A short one is read as a whole; of a WAV file with more instants than are
 * {@linkplain #mostFramesAtOnce() analysed at once}, or with more samples than memory holds, a piece at a time is read.
 */
public final class StoredCapture implements AutoCloseable {
    /** With more, figures of the whole say no more than those of its pieces. */
    private static final long MOST_FRAMES = WaveformAnalyzer.MOST_SAMPLES;

    private static final long LEAST_FRAMES = 1L << 18;
    /** What the analysis of a whole record takes of memory for a sample, and as much again to spare. */
    private static final long BYTES_PER_FRAME = 128;

    private final String sourceName;
    private final String formatText;
    private final Capture whole;
    private final Pieces pieces;
    private final long mostFrames;

    private StoredCapture(String sourceName, String formatText, Capture whole, Pieces pieces, long mostFrames) {
        this.sourceName = sourceName;
        this.formatText = formatText;
        this.whole = whole;
        this.pieces = pieces;
        this.mostFrames = mostFrames;
    }

    /** Returns up to how many instants a capture is analysed as a whole: 4,194,304, or fewer in a heap below 512 MB. */
    public static long mostFramesAtOnce() {
        return Math.max(LEAST_FRAMES, Math.min(MOST_FRAMES, Runtime.getRuntime().maxMemory() / BYTES_PER_FRAME));
    }

    /**
     * Opens a file.
     *
     * @param file a WAV file, or else a table of times and samples
     * @param voltsPerFullScale as for {@link CaptureFile#read}
     * @throws CaptureException as there, but a WAV file may be of any length
     * @throws IllegalArgumentException if a scale is not finite and above zero, or none is given
     */
    public static StoredCapture open(Path file, double[] voltsPerFullScale) throws CaptureException {
        return open(file, voltsPerFullScale, mostFramesAtOnce());
    }

    static StoredCapture open(Path file, double[] voltsPerFullScale, long mostFrames) throws CaptureException {
        double[] scales = WavFile.requireScales(voltsPerFullScale);
        if (CaptureFile.isWav(file)) {
            WavLayout layout = WavReader.layout(file);
            if (layout.frames() > mostFrames || !WavReader.fitsMemory(layout.frames() * layout.channels())) {
                double[] each = WavFile.scalesFor(file, layout.channels(), scales);
                Pieces pieces = Pieces.open(file, layout, each);
                return new StoredCapture(String.valueOf(file.getFileName()), layout.text(), null, pieces, mostFrames);
            }
        }
        Capture capture = CaptureFile.read(file, scales);
        return new StoredCapture(capture.sourceName(), capture.formatText(), capture, null, mostFrames);
    }

    /** Returns where the samples came from: the name of the file. */
    public String sourceName() {
        return sourceName;
    }

    /** Returns how they are stored, such as "WAV 24-bit integer, 2 channels, 48000 Hz". */
    public String formatText() {
        return formatText;
    }

    /** Returns the number of channels, at least one. */
    public int channels() {
        return whole == null ? pieces.layout.channels() : whole.channels().size();
    }

    /** Returns whether it is read and analysed piece by piece. */
    public boolean isLong() {
        return whole == null && pieces.layout.frames() > mostFrames;
    }

    /**
     * Analyses one channel.
     *
     * @param channel 0 for the first
     * @param settings load, frequency if known, harmonics, band
     * @param progress told the share that is done, 0 to 1, if the capture is long
     * @throws CaptureException as {@link WaveformAnalyzer#analyze}, or if the file cannot be read any more
     * @throws IndexOutOfBoundsException if there is no such channel
     */
    public ChannelAnalysis analyze(int channel, AnalysisSettings settings, DoubleConsumer progress)
            throws CaptureException {
        if (whole != null) {
            return WaveformAnalyzer.analyze(whole.channels().get(channel), settings);
        }
        RecordedChannel recorded = pieces.channel(channel);
        if (isLong()) {
            return LongAnalysis.of(recorded, settings, LongSizes.USUAL, progress);
        }
        double[] volts = new double[(int) recorded.size()];
        recorded.read(0, volts, 0, volts.length);
        return WaveformAnalyzer.analyze(Waveform.wrap(recorded.sampleRateHz(), volts), settings);
    }

    @Override
    public void close() throws CaptureException {
        if (pieces != null) {
            pieces.close();
        }
    }

    /** The samples of an open WAV file. */
    private static final class Pieces {
        private static final int BLOCK_FRAMES = 1 << 14;

        private final Path file;
        private final WavLayout layout;
        private final double[] scales;
        private final FileChannel bytes;
        private final ByteBuffer block;

        private Pieces(Path file, WavLayout layout, double[] scales, FileChannel bytes) {
            this.file = file;
            this.layout = layout;
            this.scales = scales;
            this.bytes = bytes;
            block = ByteBuffer.allocateDirect(BLOCK_FRAMES * layout.frameBytes())
                    .order(ByteOrder.LITTLE_ENDIAN);
        }

        static Pieces open(Path file, WavLayout layout, double[] scales) throws CaptureException {
            try {
                return new Pieces(file, layout, scales, FileChannel.open(file, StandardOpenOption.READ));
            } catch (IOException e) {
                throw FileFailure.reading(file, e);
            }
        }

        RecordedChannel channel(int index) {
            if (index < 0 || index >= layout.channels()) {
                throw new IndexOutOfBoundsException(index);
            }
            return new RecordedChannel() {
                @Override
                public double sampleRateHz() {
                    return layout.sampleRateHz();
                }

                @Override
                public long size() {
                    return layout.frames();
                }

                @Override
                public void read(long from, double[] volts, int offset, int count) throws CaptureException {
                    for (int done = 0; done < count; done += BLOCK_FRAMES) {
                        int now = Math.min(BLOCK_FRAMES, count - done);
                        decode(index, from + done, volts, offset + done, now);
                    }
                }
            };
        }

        private void decode(int channel, long from, double[] volts, int offset, int count) throws CaptureException {
            block.clear().limit(count * layout.frameBytes());
            long position = layout.position() + from * layout.frameBytes();
            try {
                while (block.hasRemaining()) {
                    if (bytes.read(block, position + block.position()) < 0) {
                        throw new IOException(Texts.say("wav.shrank"));
                    }
                }
            } catch (IOException e) {
                throw FileFailure.reading(file, e);
            }
            double scale = scales[channel];
            int at = channel * layout.format().bytes();
            for (int i = 0; i < count; i++, at += layout.frameBytes()) {
                double value = layout.format().get(block, at) * scale;
                if (!Double.isFinite(value)) {
                    throw new CaptureException(
                            Texts.said("wav.noNumber", file.getFileName(), from + i + 1, channel + 1));
                }
                volts[offset + i] = value;
            }
        }

        void close() throws CaptureException {
            try {
                bytes.close();
            } catch (IOException e) {
                throw FileFailure.reading(file, e);
            }
        }
    }
}
