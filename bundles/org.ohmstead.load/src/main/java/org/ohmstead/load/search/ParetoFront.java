// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The networks met so far that no other one beats. */
final class ParetoFront {
    /** Relative difference below which two values count as the same. */
    static final double SAME_RATIO = 1e-10;

    private final List<Find> members = new ArrayList<>();

    /** Returns whether none of the members is as good in everything; the one that is moves ahead, as it will often be again. */
    boolean wants(double errorRatio, Features features, int parts) {
        double worstCaseRatio = features.worstCaseRatio();
        for (int index = 0; index < members.size(); index++) {
            Find member = members.get(index);
            if (member.parts <= parts
                    && Math.abs(member.errorRatio) <= errorRatio + SAME_RATIO
                    && member.powerWatts >= features.powerWatts * (1 - SAME_RATIO)
                    && member.worstCaseRatio <= worstCaseRatio + SAME_RATIO) {
                members.set(index, members.get(0));
                members.set(0, member);
                return false;
            }
        }
        return true;
    }

    /** Returns the smallest |error| of the members that are as good as a limit in all else, beyond which no other one is wanted. */
    double reachRatio(double powerWatts, double worstCaseRatio, int parts) {
        double reach = Double.POSITIVE_INFINITY;
        for (Find member : members) {
            if (member.parts <= parts
                    && member.powerWatts >= powerWatts * (1 - SAME_RATIO)
                    && member.worstCaseRatio <= worstCaseRatio + SAME_RATIO) {
                reach = Math.min(reach, Math.abs(member.errorRatio));
            }
        }
        return reach;
    }

    /** Takes in one that is wanted. */
    void add(Find find) {
        members.removeIf(member -> covers(find, member));
        members.add(find);
    }

    List<Find> finds() {
        return members.stream()
                .sorted(Comparator.comparing(Find::distance).thenComparing(Find.BEST_FIRST))
                .toList();
    }

    private static boolean covers(Find one, Find other) {
        return one.parts <= other.parts
                && Math.abs(one.errorRatio) <= Math.abs(other.errorRatio) + SAME_RATIO
                && one.powerWatts >= other.powerWatts * (1 - SAME_RATIO)
                && one.worstCaseRatio <= other.worstCaseRatio + SAME_RATIO;
    }
}
