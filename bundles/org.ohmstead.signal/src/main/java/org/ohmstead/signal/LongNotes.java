// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;

/** What the reader of the figures of a long record should know: whether the tone ran, and ran evenly, all the time. */
final class LongNotes {
    private static final double LEAST_LEVEL_CHANGE_DB = 0.05;
    private static final double LEAST_FREQUENCY_CHANGE_RATIO = 1e-4;
    /** A change must stand out from what noise does. */
    private static final double LEAST_SIGMAS = 6;

    private static final double DISTURBED_RATIO = 10;
    /** Below this share of the tone's power it is rounding. */
    private static final double LEAST_DISTURBANCE_SHARE = 1e-10;

    private final SegmentWalk walk;
    private final double sampleRateHz;
    private final double hopSeconds;

    LongNotes(SegmentWalk walk) {
        this.walk = walk;
        sampleRateHz = walk.channel().sampleRateHz();
        hopSeconds = 0.5 * walk.segmentSize() / sampleRateHz;
    }

    /** Adds all notes but the one on clipping. */
    void addTo(List<String> notes) {
        notes.add(Texts.say(
                "note.long.pieces", Texts.four(walk.channel().size() / sampleRateHz), Texts.four(2 * hopSeconds)));
        addPlace("note.long.gone", ToneSegment.Place.GONE, notes);
        addPlace("note.long.stepped", ToneSegment.Place.STEP, notes);
        addLevel(notes);
        addFrequency(notes);
        addDisturbed(notes);
    }

    /** Adds that only some of the record is clipped. */
    void addClipped(List<String> notes) {
        addTimes("note.long.clipped", segment -> segment.clipping().clipped(), notes);
    }

    private void addPlace(String key, ToneSegment.Place place, List<String> notes) {
        int count = 0;
        int first = -1;
        for (int i = 0; i < walk.places().size(); i++) {
            if (walk.places().get(i) == place) {
                first = first < 0 ? i : first;
                count++;
            }
        }
        if (count > 0) {
            notes.add(Texts.say(key, Texts.four(count * hopSeconds), Texts.four(seconds(first))));
        }
    }

    private void addTimes(String key, Predicate<ToneSegment> counts, List<String> notes) {
        int count = 0;
        int first = -1;
        for (int i = 0; i < walk.segments().size(); i++) {
            if (walk.places().get(i) == ToneSegment.Place.STEADY
                    && counts.test(walk.segments().get(i))) {
                first = first < 0 ? i : first;
                count++;
            }
        }
        if (count > 0) {
            notes.add(Texts.say(key, Texts.four(count * hopSeconds), Texts.four(seconds(first))));
        }
    }

    /** The middle of a segment in seconds. */
    private double seconds(int segment) {
        return walk.segments().get(segment).centre() / sampleRateHz;
    }

    /** The middle of a part of the record in seconds. */
    private double partSeconds(int part) {
        return (part + 0.5) / SegmentWalk.PARTS * walk.channel().size() / sampleRateHz;
    }

    private void addLevel(List<String> notes) {
        int low = -1;
        int high = -1;
        for (int p = 0; p < SegmentWalk.PARTS; p++) {
            if (walk.part(p).count() > 0) {
                low = low < 0 || square(p) < square(low) ? p : low;
                high = high < 0 || square(p) > square(high) ? p : high;
            }
        }
        double changeDb = 10 * Math.log10(square(high) / square(low));
        int least = Math.min(walk.part(low).count(), walk.part(high).count());
        double sigmaDb = 20 / Math.log(10) * sigmaRatio() / Math.sqrt(least);
        if (changeDb > Math.max(LEAST_LEVEL_CHANGE_DB, LEAST_SIGMAS * sigmaDb)) {
            notes.add(Texts.say(
                    "note.long.level",
                    Digits.of(changeDb, 2),
                    Texts.four(Math.sqrt(square(low))),
                    Texts.four(partSeconds(low)),
                    Texts.four(Math.sqrt(square(high))),
                    Texts.four(partSeconds(high))));
        }
    }

    private double square(int part) {
        return walk.part(part).meanSquare(1);
    }

    /** Standard deviation that noise gives to the amplitude of a segment, over the amplitude. */
    private double sigmaRatio() {
        return Math.sqrt(
                walk.factorVariance(medianResidual()) / (2 * walk.everything().meanSquare(1)));
    }

    private double medianResidual() {
        double[] residuals = walk.segments().stream()
                .mapToDouble(ToneSegment::residualSquare)
                .sorted()
                .toArray();
        return residuals[residuals.length / 2];
    }

    private void addFrequency(List<String> notes) {
        double[] radians = new double[SegmentWalk.PARTS];
        int size = 0;
        int least = Integer.MAX_VALUE;
        for (int p = 0; p < SegmentWalk.PARTS; p++) {
            if (walk.part(p).count() > 0) {
                radians[size] = walk.part(p).meanRadiansPerSample();
                least = Math.min(least, walk.part(p).count());
                size++;
            }
        }
        Arrays.sort(radians, 0, size);
        double low = radians[0];
        double high = radians[size - 1];
        // Over a segment the phase at both ends is known about as well as the amplitude.
        double sigma = 8 * sigmaRatio() / (walk.segmentSize() * Math.sqrt(least));
        if (high - low > Math.max(LEAST_FREQUENCY_CHANGE_RATIO * low, LEAST_SIGMAS * sigma)) {
            notes.add(Texts.say(
                    "note.long.frequency",
                    Digits.of(low * sampleRateHz / (2 * Math.PI), 7),
                    Digits.of(high * sampleRateHz / (2 * Math.PI), 7)));
        }
    }

    private void addDisturbed(List<String> notes) {
        double usual = medianResidual() * DISTURBED_RATIO * DISTURBED_RATIO;
        double least =
                Math.max(usual, LEAST_DISTURBANCE_SHARE * walk.everything().meanSquare(1));
        addTimes("note.long.disturbed", segment -> segment.residualSquare() > least, notes);
    }
}
