// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.List;
import java.util.OptionalInt;
import org.ohmstead.model.EndPoint;

/** What a level search looks for in one channel's levels, which are in rising order. */
final class SearchGoal {
    /** Distortion this much above the limit, or a clipped wave, is no bump that goes away again. */
    private static final double SURELY_BEYOND = 3;
    /** Both levels are on the steep part, where distortion goes with the drive in a straight line. */
    private static final double STEEP_SHARE = 0.2;
    /** The best of a dip lies just below where the tops begin to be cut. */
    private static final double BELOW_ONSET_DB = 0.3;

    private final EndPoint endPoint;

    SearchGoal(EndPoint endPoint) {
        this.endPoint = endPoint;
    }

    /** Whether a level is beyond the end point. */
    boolean beyond(AnalyzedLevel level) {
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            return EndPointFinder.ratio(level.analysis(), limit.measure()) > limit.ratio();
        }
        return level.analysis().clipping().clipped();
    }

    /** The first level beyond the end point above the one from which it is sought; empty when there is none. */
    OptionalInt upper(List<AnalyzedLevel> levels) {
        int from = from(levels);
        if (beyond(levels.get(from))) {
            return OptionalInt.empty();
        }
        for (int i = from + 1; i < levels.size(); i++) {
            if (beyond(levels.get(i))) {
                return OptionalInt.of(i);
            }
        }
        return OptionalInt.empty();
    }

    private int from(List<AnalyzedLevel> levels) {
        return endPoint instanceof EndPoint.DistortionLimit limit
                ? EndPointFinder.leastDistorted(levels, limit.measure())
                : 0;
    }

    /** Whether higher levels could still show something else than that the top level is beyond the end point. */
    boolean wantsHigher(List<AnalyzedLevel> levels) {
        AnalyzedLevel top = levels.get(levels.size() - 1);
        if (!beyond(top)) {
            return true;
        }
        if (!(endPoint instanceof EndPoint.DistortionLimit limit)
                || top.analysis().clipping().clipped()) {
            return false;
        }
        double ratio = EndPointFinder.ratio(top.analysis(), limit.measure());
        if (from(levels) == levels.size() - 1) {
            return true;
        }
        boolean twoBeyond = levels.size() > 1 && beyond(levels.get(levels.size() - 2));
        return upper(levels).isPresent() && ratio < SURELY_BEYOND * limit.ratio() && !twoBeyond;
    }

    /** The drive at which the end point probably lies, between the level at an index and the one below it. */
    double estimateDb(List<AnalyzedLevel> levels, int upper) {
        AnalyzedLevel below = levels.get(upper - 1);
        AnalyzedLevel above = levels.get(upper);
        double onsetDb = above.driveDb() - above.analysis().clipping().driveOverOnsetDb();
        if (!(endPoint instanceof EndPoint.DistortionLimit limit)) {
            return onsetDb;
        }
        double low = EndPointFinder.ratio(below.analysis(), limit.measure());
        double high = EndPointFinder.ratio(above.analysis(), limit.measure());
        double middleDb = (below.driveDb() + above.driveDb()) / 2;
        if (low >= STEEP_SHARE * limit.ratio()) {
            double share = (limit.ratio() - low) / (high - low);
            double lineDb = below.driveDb() + share * (above.driveDb() - below.driveDb());
            return above.driveDb() - below.driveDb() < 1 ? lineDb : (lineDb + middleDb) / 2;
        }
        return above.analysis().clipping().clipped() ? onsetDb + ClippedSine.overdriveDb(limit.ratio()) : middleDb;
    }

    /** Where a level within the limit may hide although all are beyond it: beside the least distorted one. */
    double dipDb(List<AnalyzedLevel> levels) {
        int least = from(levels);
        int above = Math.min(levels.size() - 1, least + 1);
        AnalyzedLevel clipped = levels.get(above);
        double onsetDb = clipped.driveDb() - clipped.analysis().clipping().driveOverOnsetDb() - BELOW_ONSET_DB;
        if (clipped.analysis().clipping().clipped()
                && onsetDb > levels.get(least).driveDb() + BELOW_ONSET_DB) {
            return onsetDb;
        }
        if (least == 0) {
            return levels.get(0).driveDb() - 6;
        }
        double belowDb = levels.get(least).driveDb() - levels.get(least - 1).driveDb();
        double aboveDb = clipped.driveDb() - levels.get(least).driveDb();
        return aboveDb > belowDb
                ? levels.get(least).driveDb() + aboveDb / 2
                : levels.get(least).driveDb() - belowDb / 2;
    }

    /** How often neighbouring levels lie on different sides of the end point. */
    int crossings(List<AnalyzedLevel> levels) {
        int count = 0;
        for (int i = 1; i < levels.size(); i++) {
            if (beyond(levels.get(i)) != beyond(levels.get(i - 1))) {
                count++;
            }
        }
        return count;
    }
}
