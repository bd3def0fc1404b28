// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.List;

/** Which job has to be done before which, with all that follows from it. */
final class Precedence {
    private final boolean[][] before;

    /** Reads the pairs; a ring among them is an error. */
    Precedence(int jobs, List<Before> pairs) {
        before = new boolean[jobs][jobs];
        for (Before pair : pairs) {
            Require.index(pair.earlier(), jobs, "earlier");
            Require.index(pair.later(), jobs, "later");
            before[pair.earlier()][pair.later()] = true;
        }
        for (int via = 0; via < jobs; via++) {
            for (int from = 0; from < jobs; from++) {
                if (before[from][via]) {
                    join(before[from], before[via]);
                }
            }
        }
        for (int job = 0; job < jobs; job++) {
            if (before[job][job]) {
                throw new IllegalArgumentException(
                        "precedence has a ring through job " + job + "; it would have to come before itself");
            }
        }
    }

    private static void join(boolean[] into, boolean[] from) {
        for (int i = 0; i < into.length; i++) {
            into[i] |= from[i];
        }
    }

    int size() {
        return before.length;
    }

    boolean before(int earlier, int later) {
        return before[earlier][later];
    }

    boolean canBeFirst(int job) {
        for (boolean[] row : before) {
            if (row[job]) {
                return false;
            }
        }
        return true;
    }

    boolean canBeLast(int job) {
        for (boolean follows : before[job]) {
            if (follows) {
                return false;
            }
        }
        return true;
    }

    /**
     * Returns whether one job may come right after another: neither has to be later, nor is there one that must lie
     * between.
     */
    boolean canFollow(int earlier, int later) {
        if (earlier == later || before[later][earlier]) {
            return false;
        }
        if (before[earlier][later]) {
            for (int between = 0; between < before.length; between++) {
                if (before[earlier][between] && before[between][later]) {
                    return false;
                }
            }
        }
        return true;
    }

    boolean allows(int[] order) {
        for (int i = 0; i < order.length; i++) {
            for (int k = i + 1; k < order.length; k++) {
                if (before[order[k]][order[i]]) {
                    return false;
                }
            }
        }
        return true;
    }
}
