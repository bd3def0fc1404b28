// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

/** Makes changed copies of the order that a trial stands at, where precedence allows them. */
final class OrderMoves {
    private final OrderTrial trial;
    private final Precedence precedence;
    private final int[] candidate;

    OrderMoves(OrderTrial trial, Precedence precedence) {
        this.trial = trial;
        this.precedence = precedence;
        candidate = new int[precedence.size()];
    }

    /** Returns the copy that was made last. */
    int[] candidate() {
        return candidate;
    }

    private void copy() {
        for (int place = 0; place < candidate.length; place++) {
            candidate[place] = trial.at(place);
        }
    }

    /** Makes the candidate in which a stretch begins at another place; returns whether precedence allows it. */
    boolean moved(int from, int length, int to) {
        int low = to < from ? to : from + length;
        int high = to < from ? from : to + length;
        for (int passed = low; passed < high; passed++) {
            for (int place = from; place < from + length; place++) {
                int earlier = to < from ? trial.at(passed) : trial.at(place);
                int later = to < from ? trial.at(place) : trial.at(passed);
                if (precedence.before(earlier, later)) {
                    return false;
                }
            }
        }
        copy();
        for (int passed = low; passed < high; passed++) {
            candidate[to < from ? passed + length : passed - length] = trial.at(passed);
        }
        for (int i = 0; i < length; i++) {
            candidate[to + i] = trial.at(from + i);
        }
        return true;
    }

    boolean turned(int low, int high) {
        for (int i = low; i <= high; i++) {
            for (int k = i + 1; k <= high; k++) {
                if (precedence.before(trial.at(i), trial.at(k))) {
                    return false;
                }
            }
        }
        copy();
        for (int i = low; i <= high; i++) {
            candidate[i] = trial.at(low + high - i);
        }
        return true;
    }

    boolean swapped(int low, int high) {
        for (int i = low; i <= high; i++) {
            if (precedence.before(trial.at(low), trial.at(i)) || precedence.before(trial.at(i), trial.at(high))) {
                return false;
            }
        }
        copy();
        candidate[low] = trial.at(high);
        candidate[high] = trial.at(low);
        return true;
    }
}
