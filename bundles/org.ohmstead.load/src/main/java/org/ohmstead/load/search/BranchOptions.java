// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.ohmstead.load.Network;

/** Finds what a branch can be made of: the smallest bags of pieces that will do, with a few networks of each. */
final class BranchOptions implements NetworkSink {
    /**
     * A bag that will do and cannot be smaller.
     *
     * @param counts pieces of each kind
     * @param networks networks of just these, nearest first
     */
    record Option(int[] counts, List<Network> networks) {}

    private static final int MOST_NETWORKS = 4;

    private final BankPlanRequest.Load load;
    private final Target target;
    private final Features features = new Features();
    private final List<Find> finds = new ArrayList<>();

    private BranchOptions(BankPlanRequest.Load load, Kinds kinds) {
        this.load = load;
        target = Target.of(load.nominalOhms(), kinds);
    }

    /** Finds the options of a load's branch; fewer when stopped. */
    static List<Option> find(BankPlanRequest.Load load, Catalogue catalogue, int mostParts, Stop stop) {
        Kinds kinds = catalogue.evaluation().kinds();
        BranchOptions sink = new BranchOptions(load, kinds);
        NetworkWalk walk = new NetworkWalk(catalogue, sink, stop, mostParts);
        List<Option> options = new ArrayList<>();
        for (int parts = 1; parts <= Math.min(mostParts, 2 * catalogue.listedParts() + 1); parts++) {
            for (Bags bags = new Bags(kinds.limits(), parts); bags.hasNext() && !stop.getAsBoolean(); ) {
                Bag bag = bags.next();
                if (options.stream().noneMatch(option -> within(option.counts(), bag))) {
                    Group group = parts <= catalogue.listedParts() ? catalogue.group(bag) : catalogue.newGroup(bag);
                    walk.visit(group);
                    options.addAll(sink.take(bag, kinds.size()));
                }
            }
        }
        return options;
    }

    @Override
    public double lowOhms() {
        return load.nominalOhms() * (1 - load.toleranceRatio()) * (1 - 2 * Features.ROUNDING_RATIO);
    }

    @Override
    public double highOhms() {
        return load.nominalOhms() * (1 + load.toleranceRatio()) * (1 + 2 * Features.ROUNDING_RATIO);
    }

    @Override
    public void begin(Bag bag, Kinds kinds) {
        finds.clear();
    }

    @Override
    public void accept(Chain chain, double ohms, int parts) {
        chain.evaluate(features);
        if (features.powerWatts < load.powerWatts().orElse(0) * (1 - ParetoFront.SAME_RATIO)) {
            return;
        }
        Find find = new Find(chain, features, parts, target);
        if (target.within(find, load.toleranceRatio())
                && finds.stream().noneMatch(other -> other.text().equals(find.text()))) {
            finds.add(find);
            finds.sort(
                    Comparator.comparing((Find one) -> one, Find::compareValue).thenComparing(Find.BEST_FIRST));
            if (finds.size() > MOST_NETWORKS) {
                finds.remove(MOST_NETWORKS);
            }
        }
    }

    private List<Option> take(Bag bag, int kinds) {
        if (finds.isEmpty()) {
            return List.of();
        }
        int[] counts = new int[kinds];
        for (int kind = 0; kind < kinds; kind++) {
            counts[kind] = bag.count(kind);
        }
        return List.of(new Option(counts, finds.stream().map(Find::network).toList()));
    }

    private static boolean within(int[] counts, Bag bag) {
        for (int kind = 0; kind < counts.length; kind++) {
            if (counts[kind] > bag.count(kind)) {
                return false;
            }
        }
        return true;
    }
}
