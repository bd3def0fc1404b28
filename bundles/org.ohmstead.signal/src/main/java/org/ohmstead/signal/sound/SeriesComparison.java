// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.signal.FrequencyWeighting;

/**
 * Two series held against one another, point by point: before and after a change, or in the cabin and outside it (the cabin's
 * response). Points are compared that have the same frequency, drive and weighting; of several that do, the first not yet taken.
 *
 * @param differences second less first, in the order of the second
 * @param onlyFirst points of the first that have no partner
 * @param onlySecond points of the second that have no partner
 * @param sharedMeter whether the common error cancelled
 */
public record SeriesComparison(
        List<Difference> differences, List<SoundPoint> onlyFirst, List<SoundPoint> onlySecond, boolean sharedMeter) {
    public SeriesComparison {
        differences = List.copyOf(differences);
        onlyFirst = List.copyOf(onlyFirst);
        onlySecond = List.copyOf(onlySecond);
    }

    /**
     * The difference at one point.
     *
     * @param first of the first series
     * @param second of the second series
     * @param change second less first, with its standard uncertainty
     */
    public record Difference(SoundPoint first, SoundPoint second, Level change) {
        /** Returns whether the change is larger than its expanded uncertainty (k = 2): whether it can be told from none. */
        public boolean significant() {
            return Math.abs(change.valueDb()) > change.expandedUncertaintyDb();
        }

        /** Returns whether the microphone was noted to be at different places. */
        public boolean moved() {
            return !first.position().strip().equals(second.position().strip());
        }
    }

    /** Returns the comparison of two series. */
    public static SeriesComparison of(SoundSeries first, SoundSeries second) {
        boolean shared = first.sharesMeterWith(second);
        double repeatDb = Math.hypot(first.repeatDb(), second.repeatDb());
        double uncertaintyDb =
                shared ? repeatDb : Math.hypot(repeatDb, Math.hypot(first.commonDb(), second.commonDb()));
        List<SoundPoint> left = new ArrayList<>(first.points());
        List<SoundPoint> alone = new ArrayList<>();
        List<Difference> differences = new ArrayList<>();
        for (SoundPoint point : second.points()) {
            Optional<SoundPoint> partner =
                    left.stream().filter(point::comparableTo).findFirst();
            if (partner.isPresent()) {
                left.remove(partner.get());
                Level change = new Level(point.levelDb() - partner.get().levelDb(), uncertaintyDb);
                differences.add(new Difference(partner.get(), point, change));
            } else {
                alone.add(point);
            }
        }
        return new SeriesComparison(differences, left, alone, shared);
    }

    /**
     * Returns a series held against one reference level for all its points, such as the level of a near-field measurement at one
     * frequency: relative levels with the uncertainty of both.
     *
     * @param series the levels in the cabin
     * @param reference the level that they are related to
     */
    public static List<Level> relativeTo(SoundSeries series, Level reference) {
        return series.points().stream()
                .map(point -> LevelSums.difference(series.level(point), reference))
                .toList();
    }

    /** Returns the weightings that occur on both sides but never meet; a hint why points have no partner. */
    public List<FrequencyWeighting> weightingsApart() {
        return onlyFirst.stream()
                .filter(point -> onlySecond.stream()
                        .anyMatch(other -> point.weighting() != other.weighting()
                                && Math.abs(point.frequencyHz() - other.frequencyHz()) <= 0.005 * point.frequencyHz()))
                .map(SoundPoint::weighting)
                .distinct()
                .toList();
    }
}
