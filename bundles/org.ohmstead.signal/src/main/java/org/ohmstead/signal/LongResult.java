// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The figures of a long record, from what was summed up over its segments. */
final class LongResult {
    /** Two drives that differ by less are the same clipping, only told less surely in some segments. */
    private static final double SAME_DRIVE_RATIO = 0.2;

    private final SegmentWalk walk;
    private final AnalysisSettings settings;
    private final HarmonicSums sums;
    private final double sampleRateHz;
    private final double frequencyHz;
    private final double bandHighHz;
    private final BlockSums.Level level;
    private final int highestInBand;
    private double residualSquare;
    private double residualBandSquare;
    private double residualConductance;

    LongResult(SegmentWalk walk) throws CaptureException {
        this.walk = walk;
        settings = walk.settings();
        sums = walk.everything();
        sampleRateHz = walk.channel().sampleRateHz();
        double radians = PhaseLine.radiansPerSample(walk.segments(), walk.places());
        frequencyHz = radians * sampleRateHz / (2 * Math.PI);
        bandHighHz = walk.bandHighHz();
        highestInBand = SteadyTone.highestOrderInBand(sums.orders(), bandHighHz, frequencyHz);
        level = walk.level(walk.allSteady() ? beyondWholeCycles(radians) : BlockSums.Level.NONE);
        sumResidualSpectrum();
    }

    /** The samples at both ends that are more than whole cycles. */
    private BlockSums.Level beyondWholeCycles(double radians) throws CaptureException {
        long size = walk.channel().size();
        double period = 2 * Math.PI / radians;
        long whole = Math.min(size, Math.round(Math.floor(size / period + 1e-6) * period));
        int head = (int) ((size - whole) / 2);
        int tail = (int) (size - whole - head);
        double[] ends = new double[head + tail];
        walk.channel().read(0, ends, 0, head);
        walk.channel().read(size - tail, ends, head, tail);
        double shift = walk.level(BlockSums.Level.NONE).shiftVolts();
        BlockSums blocks = new BlockSums(shift, 1);
        blocks.add(ends, 0, ends.length);
        return blocks.all();
    }

    private void sumResidualSpectrum() {
        double binHz = sampleRateHz / walk.segmentSize();
        double[] spectrum = walk.meanSpectrum();
        double conducted = 0;
        for (int k = 0; k < spectrum.length; k++) {
            residualSquare += spectrum[k];
            residualBandSquare += spectrum[k] * Spectrum.shareInBand(k, binHz, settings.bandLowHz(), bandHighHz);
            conducted += spectrum[k] * settings.load().realPowerWatts(1, k * binHz);
        }
        residualConductance = residualSquare > 0 ? conducted / residualSquare : 0;
    }

    /** The figures with their notes. */
    ChannelAnalysis result() {
        List<String> notes = new ArrayList<>();
        if (settings.bandHighHz() > bandHighHz) {
            notes.add(Texts.say("note.bandEnds", Digits.of(bandHighHz, 6), Digits.of(settings.bandHighHz(), 6)));
        }
        SteadyTone.noteHighest(
                Math.min(settings.highestHarmonic(), highestInBand), settings, frequencyHz, bandHighHz, notes);
        Clipping clipping = clipping();
        LongNotes longNotes = new LongNotes(walk);
        longNotes.addTo(notes);
        if (clipping.clipped() && isClippedInPart()) {
            longNotes.addClipped(notes);
        }
        return figures().analysis(level.dcVolts(), level.peakVolts(), harmonics(), clipping, Optional.empty(), notes);
    }

    private ToneFigures figures() {
        double[] squares = new double[sums.orders() + 1];
        for (int n = 1; n < squares.length; n++) {
            squares[n] = sums.meanSquare(n);
        }
        return new ToneFigures(
                settings,
                frequencyHz,
                bandHighHz,
                squares,
                level.alternatingSquare(),
                residualBandSquare,
                residualConductance);
    }

    /**
     * The harmonics: averaged with their phase within each part of the record, so that noise does not add up, and by their power over the
     * parts, so that distortion counts too that changes its phase in the course of an hour.
     */
    private List<Harmonic> harmonics() {
        List<Harmonic> harmonics = new ArrayList<>();
        for (int n = 2; n <= Math.min(settings.highestHarmonic(), highestInBand); n++) {
            double square = 0;
            for (int p = 0; p < SegmentWalk.PARTS; p++) {
                HarmonicSums part = walk.part(p);
                square += part.count() > 0 ? part.ratio(n) * part.ratio(n) * part.weight() : 0;
            }
            double degrees = Math.toDegrees(sums.sinePhaseRadians(n));
            harmonics.add(new Harmonic(n, Math.sqrt(square / sums.weight()), degrees));
        }
        return harmonics;
    }

    private Clipping clipping() {
        Clipping whole = wholeClipping();
        return isClippedInPart() ? ofSome() : whole;
    }

    private Clipping wholeClipping() {
        return sums.clipping(highestPassed(), walk.factorVariance(residualSquare) / sums.count());
    }

    private Clipping ofSome() {
        HarmonicSums some = walk.clippedOnly();
        return some.clipping(highestPassed(), walk.factorVariance(residualSquare) / some.count());
    }

    private int highestPassed() {
        return SteadyTone.highestOrderPassed(sums.orders(), bandHighHz, frequencyHz, sampleRateHz);
    }

    /** Whether some segments are clipped, and their mean wave is another than that of all. */
    private boolean isClippedInPart() {
        int some = walk.clippedOnly().count();
        if (some == 0 || some == sums.count()) {
            return false;
        }
        double ofAll = wholeClipping().driveOverOnsetDb();
        double ofSome = ofSome().driveOverOnsetDb();
        return Math.abs(ofAll - ofSome) > SAME_DRIVE_RATIO * ofSome;
    }
}
