// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

/**
 * The networks of one bag of pieces: a part of the value table when they have been listed, first those whose outermost connection is
 * series, then those whose outermost is parallel, each in ascending order.
 */
final class Group {
    final Bag bag;
    final long code;
    final double lowestOhms;
    final double highestOhms;
    private int from = -1;
    private int middle = -1;
    private int to = -1;
    private double lowestSeriesOhms;
    private double highestParallelOhms;
    private Group[] splits;

    Group(Bag bag, long code, double lowestOhms, double highestOhms) {
        this.bag = bag;
        this.code = code;
        this.lowestOhms = lowestOhms;
        this.highestOhms = highestOhms;
    }

    /** Says where its networks are in a table. */
    void list(ValueTable table, int newFrom, int newMiddle, int newTo) {
        from = newFrom;
        middle = newMiddle;
        to = newTo;
        lowestSeriesOhms = from < middle ? table.ohms(from) : Double.POSITIVE_INFINITY;
        highestParallelOhms = middle < to ? table.ohms(to - 1) : 0;
    }

    /** Returns the lowest resistance of its networks whose outermost connection is series, infinite without any. */
    double lowestSeriesOhms() {
        return lowestSeriesOhms;
    }

    /** Returns the highest resistance of its other networks, 0 without any. */
    double highestParallelOhms() {
        return highestParallelOhms;
    }

    boolean listed() {
        return from >= 0;
    }

    int from() {
        return from;
    }

    int middle() {
        return middle;
    }

    int to() {
        return to;
    }

    /** Returns how many networks it lists. */
    int networks() {
        return to - from;
    }

    /** Returns where the networks begin that can be a member of a connection: not of its own sort; a single resistor of both. */
    int memberFrom(boolean series) {
        return series && bag.size() > 1 ? middle : from;
    }

    /** Returns where the networks end that can be a member of a connection. */
    int memberTo(boolean series) {
        return series || bag.size() == 1 ? to : middle;
    }

    /** Returns pairs of groups that make it up, the first of each with a piece of its first kind; null before they were set. */
    Group[] splits() {
        return splits;
    }

    void split(Group[] newSplits) {
        splits = newSplits;
    }
}
