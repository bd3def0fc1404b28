// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;

/** The networks of all small bags of pieces, listed by size as far as a bound of memory allows. */
final class Catalogue {
    /** Most entries of the value table; what a list needs while it is made comes on top, at most as much again. */
    private static final int MOST_ENTRIES = 2_000_000;

    private static final int MOST_GROUPS = 100_000;
    private static final int MOST_PASSING_REFERENCES = 1_000_000;
    private static final int STOP_EVERY = 256;

    private final Kinds kinds;
    private final ValueTable table = new ValueTable();
    private final Evaluation evaluation;
    private final ListMaker maker;
    private final GroupIndex groups;
    private final Map<Bag, Group> passing = new HashMap<>();
    private int listedParts;
    private int passingReferences;

    Catalogue(Kinds kinds, int mostParts) {
        this.kinds = kinds;
        groups = new GroupIndex(kinds.size());
        evaluation = new Evaluation(kinds, table, mostParts);
        maker = new ListMaker(evaluation);
    }

    ValueTable table() {
        return table;
    }

    Evaluation evaluation() {
        return evaluation;
    }

    /** Returns the number of parts up to which every network is listed. */
    int listedParts() {
        return listedParts;
    }

    /**
     * Lists the networks of the next number of parts.
     *
     * @return whether they are listed now; false when they would not fit or the work was stopped
     */
    boolean listNext(BooleanSupplier stopped) {
        int parts = listedParts + 1;
        int[] limits = kinds.limits();
        if (groups.size() + Bags.numbers(limits, parts, MOST_GROUPS)[parts] > MOST_GROUPS) {
            return false;
        }
        List<Group> fresh = new ArrayList<>();
        long entries = table.size();
        for (Iterator<Bag> bags = new Bags(limits, parts); bags.hasNext(); ) {
            Group group = newGroup(bags.next());
            if (parts > 1) {
                splits(group);
                entries += ListMaker.mostEntries(group);
            }
            if (entries > MOST_ENTRIES || fresh.size() % STOP_EVERY == 0 && stopped.getAsBoolean()) {
                return false;
            }
            fresh.add(group);
        }
        table.reserve((int) entries);
        for (Group group : fresh) {
            if (stopped.getAsBoolean()) {
                return false;
            }
            maker.list(group);
            groups.put(group);
        }
        listedParts = parts;
        return true;
    }

    /** Returns the group of a bag; one that is not listed is kept for a while only. */
    Group group(Bag bag) {
        if (bag.size() <= listedParts) {
            return groups.get(groups.code(bag));
        }
        Group group = passing.get(bag);
        if (group == null) {
            if (passingReferences > MOST_PASSING_REFERENCES) {
                passing.clear();
                passingReferences = 0;
            }
            group = newGroup(bag);
            passing.put(bag, group);
        }
        return group;
    }

    /** Returns pairs of groups that make up a group, the first of each with a piece of its first kind. */
    Group[] splits(Group group) {
        Group[] splits = group.splits();
        if (splits == null) {
            splits = newSplits(group);
            group.split(splits);
            passingReferences += group.bag.size() <= listedParts + 1 ? 0 : splits.length;
        }
        return splits;
    }

    private Group[] newSplits(Group group) {
        int all = group.bag.size();
        int firstKind = group.bag.firstKind();
        byte[] whole = group.bag.counts();
        byte[] part = new byte[whole.length];
        part[firstKind] = 1;
        int size = 1;
        long code = groups.weight(firstKind);
        List<Group> pairs = new ArrayList<>();
        while (size < all) {
            if (size <= listedParts && all - size <= listedParts) {
                pairs.add(groups.get(code));
                pairs.add(groups.get(group.code - code));
            } else {
                Bag bag = new Bag(part.clone());
                pairs.add(group(bag));
                pairs.add(group(group.bag.without(bag)));
            }
            // Counts up by one as an odometer does; the first kind starts at 1. The last step of all reaches the whole
            // bag.
            int kind = part.length - 1;
            while (part[kind] == whole[kind]) {
                int least = kind == firstKind ? 1 : 0;
                size -= part[kind] - least;
                code -= (part[kind] - least) * groups.weight(kind);
                part[kind] = (byte) least;
                kind--;
            }
            part[kind]++;
            size++;
            code += groups.weight(kind);
        }
        return pairs.toArray(new Group[0]);
    }

    /** Makes a group that is not kept. */
    Group newGroup(Bag bag) {
        double siemens = 0;
        double ohms = 0;
        for (int kind = 0; kind < kinds.size(); kind++) {
            ohms += bag.count(kind) * kinds.resistor(kind).ohms();
            siemens += bag.count(kind) / kinds.resistor(kind).ohms();
        }
        double room = Features.ROUNDING_RATIO;
        return new Group(bag, groups.code(bag), (1 - room) / siemens, ohms * (1 + room));
    }
}
