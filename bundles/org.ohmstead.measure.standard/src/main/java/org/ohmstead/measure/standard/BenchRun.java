// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Progress;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.Waveform;

/** A bench in the hands of a measurement: each recording is made after some settling, kept, and followed by silence. */
final class BenchRun {
    private static final double LONGEST_PIECE_SECONDS = 0.8;
    private static final double FULL_SHARE = 0.9999;

    private final Bench bench;
    private final Progress progress;
    private final Mode mode;
    private final double settleSeconds;
    private int recorded;

    BenchRun(Bench bench, Progress progress, Mode mode, double settleSeconds) {
        this.bench = bench;
        this.progress = progress;
        this.mode = mode;
        this.settleSeconds = settleSeconds;
    }

    /** What a run does; whatever becomes of it, nothing is fed afterwards. */
    interface Work<T> {
        T run(BenchRun run) throws MeasurementException, InterruptedException;
    }

    /**
     * Does the work and leaves the feed silent. When it is told to end, or silence cannot be had, the bench stands down, which waits for
     * nothing.
     */
    <T> T silentAfter(Work<T> work) throws MeasurementException, InterruptedException {
        boolean silent = false;
        try {
            T result = work.run(this);
            bench.feed(new Feed.Silence());
            silent = true;
            return result;
        } catch (MeasurementException failed) {
            silent = silencedAfter(failed);
            throw failed;
        } finally {
            if (!silent) {
                bench.standDown();
            }
        }
    }

    private boolean silencedAfter(MeasurementException failed) throws InterruptedException {
        try {
            bench.feed(new Feed.Silence());
            return true;
        } catch (MeasurementException worse) {
            failed.addSuppressed(worse);
            return false;
        }
    }

    Bench bench() {
        return bench;
    }

    Progress progress() {
        return progress;
    }

    /** Number of recordings that were kept. */
    int recordedCount() {
        return recorded;
    }

    /**
     * Feeds, settles, records and falls silent.
     *
     * @param seconds length of the record, without what is left out of it for settling
     */
    Acquisition record(Feed feed, double seconds) throws MeasurementException, InterruptedException {
        progress.checkpoint();
        bench.feed(feed);
        double left = settleSeconds;
        // What is not kept is a bench's only way to wait; it is cut off the record unless that would hold up a stop.
        while (left + seconds > LONGEST_PIECE_SECONDS && left > 0) {
            double piece = Math.min(left, LONGEST_PIECE_SECONDS);
            bench.acquire(piece);
            progress.checkpoint();
            left -= piece;
        }
        Acquisition acquisition = withoutStart(bench.acquire(seconds + left), left, seconds);
        bench.feed(new Feed.Silence());
        progress.recorded(acquisition);
        recorded++;
        progress.checkpoint();
        requireInsideRange(acquisition);
        return acquisition;
    }

    /** A record that is shorter than what was asked for (one that was made before) is kept as it is. */
    private static Acquisition withoutStart(Acquisition whole, double seconds, double keptSeconds) {
        double rate = whole.output().sampleRateHz();
        int from = (int) Math.round(seconds * rate);
        if (from <= 0 || whole.output().size() < from + Math.floor(keptSeconds * rate)) {
            return whole;
        }
        return new Acquisition(
                withoutStart(whole.output(), from),
                whole.input().map(input -> withoutStart(input, (int) Math.round(seconds * input.sampleRateHz()))),
                whole.voltsPerFullScale(),
                whole.during());
    }

    private static Capture withoutStart(Capture whole, int from) {
        return new Capture(
                whole.channels().stream()
                        .map(channel -> channel.slice(from, channel.size()))
                        .toList(),
                whole.sourceName(),
                whole.formatText());
    }

    private void requireInsideRange(Acquisition acquisition) throws MeasurementException {
        List<Waveform> channels = acquisition.output().channels();
        for (int channel = 0; channel < channels.size(); channel++) {
            Waveform waveform = channels.get(channel);
            double range = acquisition.voltsPerFullScale().get(channel);
            for (int i = 0; i < waveform.size(); i++) {
                if (Math.abs(waveform.voltsAt(i)) >= FULL_SHARE * range) {
                    throw Faults.of("recorderClipped", LevelAnalysis.channelName(mode, channel), range);
                }
            }
        }
    }

    /** The input's waveform of a channel, when the bench has it. */
    static Optional<Waveform> input(Acquisition acquisition, int channel) {
        return acquisition.input().map(Capture::channels).map(all -> all.get(Math.min(channel, all.size() - 1)));
    }

    /** Names of the channels that are recorded. */
    static List<String> names(Mode mode, int count) {
        List<String> names = new ArrayList<>();
        for (int channel = 0; channel < count; channel++) {
            names.add(LevelAnalysis.channelName(mode, channel));
        }
        return names;
    }
}
