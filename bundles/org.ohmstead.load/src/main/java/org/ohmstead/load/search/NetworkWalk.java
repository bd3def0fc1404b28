// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.function.BooleanSupplier;

/**
 * Visits every network of a group whose resistance lies within a window. Of a group that is not listed it goes through all pairs of
 * smaller ones that make it up: where both are listed it takes each network of the shorter list and looks up in the longer one what meets
 * it inside the window; where one of them is not listed it visits that one with the window that the other leaves.
 */
final class NetworkWalk {
    private static final double ROOM = Features.ROUNDING_RATIO;
    private static final int SERIES = 1;
    private static final int PARALLEL = 2;
    private static final int STOP_MASK = 0x3FF;

    private final Catalogue catalogue;
    private final ValueTable table;
    private final NetworkSink sink;
    private final BooleanSupplier stopped;
    private final Chain chain;
    private double lowOhms;
    private double highOhms;
    private double siemensOfLow = Double.NaN;
    private double siemensOfHigh = Double.NaN;
    private double windowMostSiemens;
    private double windowLeastSiemens;
    private int visits;
    private boolean ended;
    private int parts;

    NetworkWalk(Catalogue catalogue, NetworkSink sink, BooleanSupplier stopped, int mostParts) {
        this.catalogue = catalogue;
        this.sink = sink;
        this.stopped = stopped;
        table = catalogue.table();
        chain = new Chain(catalogue.evaluation(), mostParts);
    }

    /**
     * Offers every network of the group in the sink's window to the sink.
     *
     * @return false when it was stopped before the end
     */
    boolean visit(Group group) {
        begin(group.bag);
        visit(group, SERIES | PARALLEL, sink.lowOhms(), sink.highOhms());
        return !ended;
    }

    /** As {@link #visit(Group)}, but of a group that is not listed only the networks made up of two that are. */
    boolean visitPairs(Group group) {
        begin(group.bag);
        Group[] splits = catalogue.splits(group);
        for (int pair = 0; pair < splits.length && !mustEnd(); pair += 2) {
            if (splits[pair].listed() && splits[pair + 1].listed()) {
                pair(splits[pair], splits[pair + 1], true, sink.lowOhms(), sink.highOhms());
                pair(splits[pair], splits[pair + 1], false, sink.lowOhms(), sink.highOhms());
            }
        }
        return !ended;
    }

    /**
     * Offers the networks made up of one of a group that is not listed and one of a listed group. That the same open group comes with
     * one listed group after the other keeps the lists that make it up near at hand.
     *
     * @return false when it was stopped before the end
     */
    boolean visitOpen(Group open, Group listed) {
        Bag whole = open.bag.with(listed.bag);
        begin(whole);
        int firstKind = whole.firstKind();
        if (listed.bag.startsWith(firstKind)) {
            pair(listed, open, true, sink.lowOhms(), sink.highOhms());
            pair(listed, open, false, sink.lowOhms(), sink.highOhms());
        }
        if (open.bag.startsWith(firstKind)) {
            pair(open, listed, true, sink.lowOhms(), sink.highOhms());
            pair(open, listed, false, sink.lowOhms(), sink.highOhms());
        }
        return !ended;
    }

    private void begin(Bag bag) {
        parts = bag.size();
        sink.begin(bag, catalogue.evaluation().kinds());
    }

    private void visit(Group group, int roots, double low, double high) {
        if (group.highestOhms < low || group.lowestOhms > high || mustEnd()) {
            return;
        }
        if (group.listed()) {
            offerAll(group.from(), group.middle(), low, high);
            offerAll(group.middle(), group.to(), low, high);
            return;
        }
        Group[] splits = catalogue.splits(group);
        for (int pair = 0; pair < splits.length && !ended; pair += 2) {
            if ((roots & SERIES) != 0) {
                pair(splits[pair], splits[pair + 1], true, low, high);
            }
            if ((roots & PARALLEL) != 0) {
                pair(splits[pair], splits[pair + 1], false, low, high);
            }
        }
    }

    private void offerAll(int from, int to, double low, double high) {
        for (int entry = table.lowerBound(from, to, low); entry < to && table.ohms(entry) <= high; entry++) {
            chain.core(entry);
            offer();
        }
    }

    private void pair(Group member, Group rest, boolean series, double low, double high) {
        double least = Features.joinedOhms(member.lowestOhms, rest.lowestOhms, series);
        double most = Features.joinedOhms(member.highestOhms, rest.highestOhms, series);
        if (least > high * (1 + ROOM) || most < low * (1 - ROOM)) {
            return;
        }
        if (member.listed() && rest.listed()) {
            matchAll(member, rest, series, low, high);
            return;
        }
        Group open = member.listed() ? rest : member;
        int openRoots = member.listed() ? SERIES | PARALLEL : otherRoot(series);
        int from = member.listed() ? member.memberFrom(series) : rest.from();
        int to = member.listed() ? member.memberTo(series) : rest.to();
        for (int entry = from; entry < to && !ended; entry++) {
            if (narrow(entry, series, low, high, open)) {
                chain.push(entry, series);
                visit(open, openRoots, lowOhms, highOhms);
                chain.pop();
            }
        }
    }

    private static int otherRoot(boolean series) {
        return series ? PARALLEL : SERIES;
    }

    private void matchAll(Group member, Group rest, boolean series, double low, double high) {
        int memberFrom = member.memberFrom(series);
        int memberTo = member.memberTo(series);
        if (memberTo - memberFrom < rest.networks()) {
            for (int entry = memberFrom; entry < memberTo; entry++) {
                if (narrow(entry, series, low, high, rest)) {
                    matchBoth(entry, rest, series);
                }
            }
        } else {
            for (int entry = rest.from(); entry < rest.to(); entry++) {
                if (narrow(entry, series, low, high, member)) {
                    match(entry, memberFrom, memberTo, series);
                }
            }
        }
    }

    /**
     * Sets the window for what is joined to an entry to give a resistance within a window, a little too wide; returns false when
     * no network of a group can be in it.
     */
    private boolean narrow(int entry, boolean series, double low, double high, Group group) {
        double ohms = table.ohms(entry);
        if (series) {
            lowOhms = Math.max(0, low * (1 - ROOM) - ohms * (1 + ROOM));
            highOhms = high * (1 + ROOM) - ohms * (1 - ROOM);
            return highOhms >= group.lowestOhms && lowOhms <= group.highestOhms;
        }
        if (low != siemensOfLow || high != siemensOfHigh) {
            siemensOfLow = low;
            siemensOfHigh = high;
            windowMostSiemens = (1 + ROOM) / low;
            windowLeastSiemens = (1 - ROOM) / high;
        }
        double siemens = 1 / ohms;
        double mostSiemens = windowMostSiemens - (1 - ROOM) * siemens;
        double leastSiemens = windowLeastSiemens - (1 + ROOM) * siemens;
        // Most entries end here, before anything more is divided.
        if (mostSiemens * group.highestOhms < 1 - ROOM || leastSiemens * group.lowestOhms > 1 + ROOM) {
            return false;
        }
        lowOhms = (1 - ROOM) / mostSiemens;
        highOhms = leastSiemens > 0 ? (1 + ROOM) / leastSiemens : Double.POSITIVE_INFINITY;
        return true;
    }

    private void matchBoth(int entry, Group rest, boolean series) {
        if (highOhms >= rest.lowestSeriesOhms()) {
            match(entry, rest.from(), rest.middle(), series);
        }
        if (lowOhms <= rest.highestParallelOhms()) {
            match(entry, rest.middle(), rest.to(), series);
        }
    }

    private void match(int entry, int from, int to, boolean series) {
        double high = highOhms;
        for (int other = table.lowerBound(from, to, lowOhms); other < to && table.ohms(other) <= high; other++) {
            chain.core(entry, other, series);
            offer();
        }
    }

    private void offer() {
        double ohms = chain.ohms();
        if (ohms >= sink.lowOhms() && ohms <= sink.highOhms()) {
            sink.accept(chain, ohms, parts);
        }
    }

    private boolean mustEnd() {
        visits++;
        if ((visits & STOP_MASK) == 0 && stopped.getAsBoolean()) {
            ended = true;
        }
        return ended;
    }
}
