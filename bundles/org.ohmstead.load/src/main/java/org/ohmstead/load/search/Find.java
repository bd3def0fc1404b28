// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.Comparator;
import java.util.OptionalDouble;
import org.ohmstead.load.Network;

/** A network that was met, with what it is judged by. */
final class Find {
    /** Fewest parts, then tightest worst case, then most power. */
    static final Comparator<Find> BEST_FIRST = (one, other) -> {
        if (one.parts != other.parts) {
            return Integer.compare(one.parts, other.parts);
        }
        if (Math.abs(one.worstCaseRatio - other.worstCaseRatio) > ParetoFront.SAME_RATIO) {
            return Double.compare(one.worstCaseRatio, other.worstCaseRatio);
        }
        double room = ParetoFront.SAME_RATIO * Math.max(one.powerWatts, other.powerWatts);
        return Math.abs(one.powerWatts - other.powerWatts) > room
                ? Double.compare(other.powerWatts, one.powerWatts)
                : 0;
    };

    final double ohms;
    final double errorRatio;
    final int parts;
    final double worstCaseRatio;
    final double powerWatts;
    private final double lowOhms;
    private final double highOhms;
    private final Chain chain;
    private final Target target;
    private Fraction exact;
    private Fraction distance;
    private Network network;
    private String text;

    Find(Chain chain, Features features, int parts, Target target) {
        this.chain = chain.copy();
        this.parts = parts;
        this.target = target;
        ohms = features.ohms;
        errorRatio = features.ohms / target.ohms() - 1;
        worstCaseRatio = features.worstCaseRatio();
        powerWatts = features.powerWatts;
        lowOhms = features.lowOhms;
        highOhms = features.highOhms;
    }

    Fraction exact() {
        if (exact == null) {
            exact = chain.exact();
        }
        return exact;
    }

    Fraction distance() {
        if (distance == null) {
            distance = exact().distanceTo(target.exact());
        }
        return distance;
    }

    /** Compares by distance to the target, exactly; of two at the same distance the lower resistance comes first. */
    int compareValue(Find other) {
        double mine = Math.abs(errorRatio);
        double theirs = Math.abs(other.errorRatio);
        double room = 2 * Features.ROUNDING_RATIO * (2 + mine + theirs);
        if (Math.abs(mine - theirs) > room) {
            return Double.compare(mine, theirs);
        }
        int byDistance = distance().compareTo(other.distance());
        return byDistance != 0 ? byDistance : exact().compareTo(other.exact());
    }

    Network network() {
        if (network == null) {
            network = chain.network();
        }
        return network;
    }

    String text() {
        if (text == null) {
            text = Ordering.text(network());
        }
        return text;
    }

    Candidate candidate() {
        boolean rated = network().resistors().stream()
                .allMatch(resistor -> resistor.rating().isPresent());
        return new Candidate(
                network(),
                ohms,
                errorRatio,
                parts,
                lowOhms,
                highOhms,
                rated ? OptionalDouble.of(powerWatts) : OptionalDouble.empty());
    }
}
