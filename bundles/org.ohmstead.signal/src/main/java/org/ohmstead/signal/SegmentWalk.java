// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;

/**
 * Goes once through a long record in segments that overlap by half or a little more. The tone and its harmonics are fitted in each, and the
 * spectrum of what is left is averaged (P. D. Welch, "The use of fast Fourier transform for the estimation of power spectra: a method based
 * on time averaging over short, modified periodograms", IEEE Trans. Audio Electroacoust. AU-15, 1967, pp. 70-73).
 * Nothing that grows with the record is kept but a few numbers of each segment.
 */
final class SegmentWalk {
    /** Parts of the record within which harmonics are averaged with their phase. */
    static final int PARTS = 16;

    private static final double LEAST_LEVEL_RATIO = 0.1;
    private static final double MOST_FREQUENCY_SHARE = 0.1;
    private static final double NOISE_PEAKS = 10;

    private final RecordedChannel channel;
    private final int size;
    private final ToneSegment start;
    private final AnalysisSettings settings;
    private final SegmentFit fits;
    private final double[] weights;
    private final double weightSquare;
    private final BlockSums blocks;
    private final List<ToneSegment> segments = new ArrayList<>();
    private final List<ToneSegment.Place> places = new ArrayList<>();
    private final HarmonicSums[] parts = new HarmonicSums[PARTS];
    private final HarmonicSums clipped;
    private final double[] spectrum;
    /** Number of segments behind the first; they lie evenly, so that no place counts more than another. */
    private final int hops;

    private double radians;
    private Found pending;

    /**
     * Prepares a walk.
     *
     * @param channel the record
     * @param size samples of a segment, an even number
     * @param start what is known of the tone: frequency and amplitude
     * @param dcVolts about the direct voltage
     * @param settings as for any analysis
     */
    SegmentWalk(RecordedChannel channel, int size, ToneSegment start, double dcVolts, AnalysisSettings settings) {
        this.channel = channel;
        this.size = size;
        this.start = start;
        this.settings = settings;
        fits = new SegmentFit(size, mostOrders());
        weights = Window.HANN.centredWeights(size);
        double square = 0;
        for (double weight : weights) {
            square += weight * weight;
        }
        weightSquare = square;
        long rest = channel.size() - size;
        hops = (int) ((rest + size / 2 - 1) / (size / 2));
        blocks = new BlockSums(dcVolts, hops + 2);
        int orders = mostOrders();
        for (int p = 0; p < PARTS; p++) {
            parts[p] = new HarmonicSums(orders);
        }
        clipped = new HarmonicSums(orders);
        spectrum = new double[size / 2 + 1];
        radians = start.radiansPerSample();
    }

    private int mostOrders() {
        return Math.max(20, settings.highestHarmonic());
    }

    /**
     * Goes through the record.
     *
     * @param progress told the share that is done, 0 to 1
     */
    void run(DoubleConsumer progress) throws CaptureException {
        int hop = size / 2;
        double[] volts = new double[size];
        channel.read(0, volts, 0, size);
        blocks.add(volts, 0, hop);
        blocks.add(volts, hop, hop);
        take(volts, 0);
        long next = size;
        for (int i = 1; i <= hops; i++) {
            long end = size + (channel.size() - size) * i / hops;
            int fresh = (int) (end - next);
            System.arraycopy(volts, fresh, volts, 0, size - fresh);
            channel.read(next, volts, size - fresh, fresh);
            blocks.add(volts, size - fresh, fresh);
            next = end;
            take(volts, next - size);
            progress.accept((double) i / hops);
        }
        settle(null);
    }

    private void take(double[] volts, long from) {
        HarmonicFit fit = fits.fit(volts, radians);
        double[] work = fit.residual();
        for (int i = 0; i < size; i++) {
            work[i] *= weights[i];
        }
        double[] squares = RealTransform.squaredMagnitudes(work);
        double residualSquare = 0;
        for (int k = 0; k < squares.length; k++) {
            squares[k] *= (k == 0 || 2 * k == size ? 1 : 2) / (size * weightSquare);
            residualSquare += squares[k];
        }
        double square = 0.5 * fit.amplitudeVolts(1) * fit.amplitudeVolts(1);
        double noisePeak = 2 * residualSquare * Math.log(0.5 * size) / size;
        boolean present = square > NOISE_PEAKS * noisePeak
                && fit.amplitudeVolts(1) > LEAST_LEVEL_RATIO * start.voltsPeak()
                && Math.abs(fit.radiansPerSample() / start.radiansPerSample() - 1) < MOST_FREQUENCY_SHARE;
        ToneSegment segment = new ToneSegment(
                from + 0.5 * (size - 1),
                fit.radiansPerSample(),
                fit.middlePhaseRadians(),
                fit.amplitudeVolts(1),
                residualSquare,
                present,
                present ? ClippingFit.of(fit, highestOrderPassed(fit), factorVariance(residualSquare)) : Clipping.NONE);
        if (present) {
            radians = fit.radiansPerSample();
        }
        settle(segment);
        segments.add(segment);
        pending = new Found(fit, squares);
    }

    private int highestOrderPassed(HarmonicFit fit) {
        double frequencyHz = fit.radiansPerSample() * channel.sampleRateHz() / (2 * Math.PI);
        return SteadyTone.highestOrderPassed(fit.orders(), bandHighHz(), frequencyHz, channel.sampleRateHz());
    }

    /** Upper end of the band that is used. */
    double bandHighHz() {
        return Math.min(settings.bandHighHz(), channel.sampleRateHz() / 2);
    }

    /** Variance that noise gives to each factor of one segment. */
    double factorVariance(double residualSquare) {
        return 2 * residualSquare * Window.BLACKMAN_HARRIS_4.noiseBandwidthBins() / size;
    }

    /** Adds the last segment to the sums, if the tone is steady there, now that its neighbour is known too. */
    private void settle(ToneSegment after) {
        if (pending == null) {
            return;
        }
        int index = segments.size() - 1;
        ToneSegment before = index > 0 ? segments.get(index - 1) : null;
        ToneSegment segment = segments.get(index);
        ToneSegment.Place place = segment.placeBetween(before, after);
        places.add(place);
        if (place == ToneSegment.Place.STEADY) {
            for (int k = 0; k < spectrum.length; k++) {
                spectrum[k] += pending.squares[k];
            }
            parts[(int) (index * (long) PARTS / (hops + 1))].add(pending.fit);
            if (segment.clipping().clipped()) {
                clipped.add(pending.fit);
            }
        }
        pending = null;
    }

    RecordedChannel channel() {
        return channel;
    }

    AnalysisSettings settings() {
        return settings;
    }

    /** Samples of a segment. */
    int segmentSize() {
        return size;
    }

    List<ToneSegment> segments() {
        return segments;
    }

    /** Where each segment lies. */
    List<ToneSegment.Place> places() {
        return places;
    }

    /** Number of segments in which the tone is steady. */
    int steadyCount() {
        return everything().count();
    }

    boolean allSteady() {
        return steadyCount() == segments.size();
    }

    /** The harmonics of all steady segments together. */
    HarmonicSums everything() {
        HarmonicSums sums = new HarmonicSums(mostOrders());
        for (HarmonicSums part : parts) {
            sums.add(part);
        }
        return sums;
    }

    /** The harmonics of one part of the record. */
    HarmonicSums part(int index) {
        return parts[index];
    }

    /** The harmonics of the steady segments whose tops are cut off. */
    HarmonicSums clippedOnly() {
        return clipped;
    }

    /** Mean square of what is left over, at each multiple of the sample rate over the size of a segment, over the steady segments. */
    double[] meanSpectrum() {
        double[] mean = spectrum.clone();
        int count = steadyCount();
        for (int k = 0; k < mean.length; k++) {
            mean[k] /= count;
        }
        return mean;
    }

    /** Sums over the half segments that lie in steady segments only, less samples that are taken off. */
    BlockSums.Level level(BlockSums.Level without) {
        boolean[] used = new boolean[blocks.size()];
        for (int k = 0; k < used.length; k++) {
            boolean first = k == 0 || steady(k - 1);
            used[k] = first && (k >= places.size() || steady(k));
        }
        return blocks.level(used, without);
    }

    private boolean steady(int segment) {
        return places.get(segment) == ToneSegment.Place.STEADY;
    }

    /** A fit that waits for its neighbour. */
    private record Found(HarmonicFit fit, double[] squares) {}
}
