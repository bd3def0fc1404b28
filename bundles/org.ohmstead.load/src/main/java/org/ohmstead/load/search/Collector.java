// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.List;
import java.util.Optional;

/** Takes in the networks met and keeps those that count. */
final class Collector implements NetworkSink {
    private static final double PARETO_RATIO = 0.01;
    private static final double BAND_POWER_RATIO = 0.99;
    private static final double ROOM = 4 * Features.ROUNDING_RATIO;

    private final Target target;
    private final double limitRatio;
    private final double paretoRatio;
    private final double powerWatts;
    private final boolean banded;
    private final double leastToleranceRatio;
    private final Ranking ranking;
    private final Ranking nearest = new Ranking(1, 1, Double.POSITIVE_INFINITY);
    private final ParetoFront front = new ParetoFront();
    private final Features features = new Features();
    private Optional<Find> strongest = Optional.empty();
    private double groupParetoRatio;
    private double lowOhms;
    private double highOhms;

    Collector(SearchRequest request, Kinds kinds) {
        target = Target.of(request.targetOhms(), kinds);
        limitRatio = request.errorLimitRatio().orElse(Double.POSITIVE_INFINITY);
        paretoRatio = request.errorLimitRatio().orElse(PARETO_RATIO);
        powerWatts = request.powerWatts().orElse(0);
        banded = kinds.banded();
        leastToleranceRatio = request.stock().items().stream()
                .mapToDouble(item -> item.resistor().toleranceRatio())
                .min()
                .orElse(0);
        groupParetoRatio = paretoRatio;
        ranking = new Ranking(request.valuesWanted(), request.networksPerValue(), limitRatio);
        setWindow();
    }

    @Override
    public double lowOhms() {
        return lowOhms;
    }

    @Override
    public double highOhms() {
        return highOhms;
    }

    /** Prepares for networks of a bag: no resistor of theirs is tighter than the tightest, none takes more than is allowed. */
    @Override
    public void begin(Bag bag, Kinds kinds) {
        groupParetoRatio =
                Math.min(paretoRatio, front.reachRatio(kinds.powerWatts(bag), leastToleranceRatio, bag.size()));
        setWindow();
    }

    @Override
    public void accept(Chain chain, double ohms, int parts) {
        double error = Math.abs(ohms / target.ohms() - 1);
        chain.evaluate(features);
        boolean meets = meets();
        boolean near = error <= nearest.boundRatio() + ROOM * (1 + error);
        boolean ranks = meets && error <= ranking.boundRatio() + ROOM * (1 + error);
        boolean pareto = meets && unbeaten(error, parts);
        // While none is strong enough the front is empty, and so the window stays as wide as the error limit.
        boolean strong = error <= paretoRatio && strongerThanAll();
        if (near || ranks || pareto || strong) {
            keep(new Find(chain, features, parts, target), near, ranks, pareto);
            if (strong) {
                strongest = Optional.of(new Find(chain, features, parts, target));
            }
            setWindow();
        }
    }

    private void keep(Find find, boolean near, boolean ranks, boolean pareto) {
        if (near) {
            nearest.offer(find);
        }
        if (ranks && target.within(find, limitRatio)) {
            ranking.offer(find);
        }
        if (pareto && target.within(find, paretoRatio)) {
            front.add(find);
        }
    }

    List<Find> ranked() {
        return ranking.finds();
    }

    List<Find> pareto() {
        return front.finds();
    }

    Optional<Find> nearest() {
        return nearest.finds().stream().findFirst();
    }

    /** Returns the network within the error limit that takes most power, when power was asked for. */
    Optional<Find> strongest() {
        return strongest;
    }

    private boolean unbeaten(double error, int parts) {
        return error <= paretoRatio + ROOM * (1 + error) && front.wants(error, features, parts);
    }

    private boolean meets() {
        boolean strongEnough = features.powerWatts >= powerWatts * (1 - ParetoFront.SAME_RATIO);
        return strongEnough && (!banded || features.bandPowerRatio() >= BAND_POWER_RATIO);
    }

    private boolean strongerThanAll() {
        return powerWatts > 0
                && (strongest.isEmpty()
                        || features.powerWatts > strongest.get().powerWatts * (1 + ParetoFront.SAME_RATIO));
    }

    private void setWindow() {
        double ratio = Math.max(groupParetoRatio, Math.max(ranking.boundRatio(), nearest.boundRatio()));
        lowOhms = Math.max(0, target.ohms() * (1 - ratio - ROOM));
        highOhms = target.ohms() * (1 + ratio) * (1 + ROOM);
    }
}
