// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.SampleFormat;
import org.ohmstead.signal.WavStream;
import org.ohmstead.signal.Waveform;
import org.ohmstead.units.text.Messages;

/**
 * A signal as a WAV file. Integers are dithered with triangular noise of two steps from end to end before they are rounded; the same seed gives the
 * same file. Written block by block, so that hours need no memory.
 *
 * @param stimulus what is written
 * @param format how samples are stored
 * @param channels which channels carry it
 * @param marked whether markers and a leader stand around it; without them the file can be played over and over without a gap
 * @param ditherSeed chooses the dither
 */
public record SignalFile(Stimulus stimulus, SampleFormat format, ChannelUse channels, boolean marked, long ditherSeed) {
    private static final int BLOCK_FRAMES = 8192;
    /** Markers stay so far below the signal's peak, as they are no less loud to an amplifier than the signal. */
    private static final double MARKERS_LOWER_DB = 10;

    private static final double LOWEST_MARKER_DBFS = -40;

    /** Checks that everything is given. */
    public SignalFile {
        Objects.requireNonNull(stimulus, "stimulus");
        Objects.requireNonNull(format, "format");
        Objects.requireNonNull(channels, "channels");
    }

    /**
     * What came of writing.
     *
     * @param file where it stands
     * @param frames how many instants it holds
     * @param limited how many samples lay beyond the last step and became it, over all channels
     */
    public record Written(Path file, long frames, long limited) {}

    /** Returns where things lie in a file with markers, or empty when there are none. */
    public Optional<SignalLayout> layout() {
        return marked ? Optional.of(SignalLayout.of(stimulus.sampleRateHz(), stimulus.frames())) : Optional.empty();
    }

    /** Returns the level of markers and leader: 10 dB below the signal's peak, but not below -40 dBFS. */
    public double markerDbfs() {
        return Math.max(LOWEST_MARKER_DBFS, Math.min(0, stimulus.facts().peakDbfs()) - MARKERS_LOWER_DB);
    }

    /** Returns the number of instants in the file. */
    public long frames() {
        return layout().map(SignalLayout::frames).orElse(stimulus.frames());
    }

    /** Returns the size of the file in bytes. */
    public double fileBytes() {
        return 44 + (double) frames() * channels.count() * format.bits() / 8;
    }

    /** Returns the remarks on the signal and on what the format does to it. */
    public List<StimulusRemark> remarks() {
        List<StimulusRemark> remarks = new ArrayList<>(stimulus.remarks());
        double room = 1 - Levels.ratio(stimulus.facts().peakDbfs());
        if (stimulus.usable() && room < 2 * format.step()) {
            remarks.add(StimulusRemark.note("topStep"));
        }
        return List.copyOf(remarks);
    }

    /**
     * Returns samples of the signal as the file stores them, dither and rounding included, in a waveform in which one volt stands for full scale.
     * The dither is another part of the same noise than in the file.
     *
     * @param from the first sample, 0 for the signal's first
     * @param count how many
     * @throws IllegalArgumentException unless they lie in the signal
     */
    public Waveform stored(long from, int count) {
        double[] samples = new double[count];
        stimulus.read(from, samples, count);
        new Dither(ditherSeed, format.step()).add(samples, count);
        for (int i = 0; i < count && !format.floating(); i++) {
            samples[i] = Math.rint(samples[i] / format.step()) * format.step();
        }
        return Waveform.of(stimulus.sampleRateHz(), samples);
    }

    /**
     * Writes the file.
     *
     * @param file where it will stand; replaced when it is there
     * @param progress hears how far it has come
     * @throws CaptureException if it cannot be written; nothing is left behind
     * @throws CancellationException if the progress said to stop; nothing is left behind
     * @throws IllegalArgumentException if the signal reaches beyond full scale
     */
    public Written write(Path file, RenderProgress progress) throws CaptureException {
        if (!stimulus.usable()) {
            throw new IllegalArgumentException("the signal must not reach beyond full scale, but "
                    + stimulus.remarks().get(0).sentence(Locale.ROOT));
        }
        SampleSource source = layout().map(layout -> (SampleSource) new MarkedSource(stimulus, layout, markerDbfs()))
                .orElse(stimulus::read);
        Dither dither = new Dither(ditherSeed, format.step());
        long frames = frames();
        double[] block = new double[BLOCK_FRAMES];
        double[][] shares = new double[channels.count()][BLOCK_FRAMES];
        try (WavStream stream = WavStream.create(file, stimulus.sampleRateHz(), channels.count(), format, frames)) {
            for (long from = 0; from < frames; from += BLOCK_FRAMES) {
                if (!progress.goOn((double) from / frames)) {
                    throw new CancellationException(
                            Messages.of(SignalFile.class).text("failure.stopped", file.getFileName()));
                }
                int count = (int) Math.min(BLOCK_FRAMES, frames - from);
                source.fill(from, block, count);
                dither.add(block, count);
                spread(block, shares, count);
                stream.write(shares, count);
            }
            stream.finish();
            return new Written(file, frames, stream.limited());
        }
    }

    private void spread(double[] block, double[][] shares, int count) {
        for (int c = 0; c < shares.length; c++) {
            double factor = channels.factor(c);
            for (int i = 0; i < count; i++) {
                shares[c][i] = factor * block[i];
            }
        }
    }
}
