// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

/**
 * Lists the networks of a bag of pieces from the lists of smaller ones. Of networks that are exactly equal in resistance, and in impedance
 * where that counts, only those are kept that no other one beats in both ends of the tolerance and in power: nothing built from a beaten
 * one could be better than the same built from the one that beats it.
 */
final class ListMaker {
    private static final double SAME_RATIO = 4 * Features.ROUNDING_RATIO;

    private final Kinds kinds;
    private final ValueTable table;
    private final ValueTable draft = new ValueTable();
    private final Evaluation evaluation;
    private final Features kept = new Features();
    private final Features fresh = new Features();
    private int[] order = new int[0];
    private int[] spare = new int[0];

    ListMaker(Evaluation evaluation) {
        this.evaluation = evaluation;
        kinds = evaluation.kinds();
        table = evaluation.table();
    }

    /** Returns a bound of the entries that a group's list takes. */
    static long mostEntries(Group group) {
        long entries = 0;
        Group[] splits = group.splits();
        for (int pair = 0; pair < splits.length; pair += 2) {
            Group member = splits[pair];
            long members = member.bag.size() == 1 ? 2 : member.networks();
            entries += members * splits[pair + 1].networks();
        }
        return entries;
    }

    void list(Group group) {
        int from = table.size();
        if (group.bag.size() == 1) {
            int kind = group.bag.firstKind();
            table.addSingle(kind, kinds.resistor(kind).ohms());
            group.list(table, from, from, table.size());
            return;
        }
        fill(group, true);
        int middle = table.size();
        fill(group, false);
        group.list(table, from, middle, table.size());
    }

    private void fill(Group group, boolean series) {
        draft.clear();
        Group[] splits = group.splits();
        for (int pair = 0; pair < splits.length; pair += 2) {
            Group member = splits[pair];
            Group rest = splits[pair + 1];
            for (int one = member.memberFrom(series); one < member.memberTo(series); one++) {
                double ohms = table.ohms(one);
                for (int other = rest.from(); other < rest.to(); other++) {
                    draft.addJoined(one, other, series, Features.joinedOhms(ohms, table.ohms(other), series));
                }
            }
        }
        sort();
        int from = table.size();
        for (int index = 0; index < draft.size(); index++) {
            keep(order[index], from);
        }
    }

    private void keep(int candidate, int from) {
        int entry = table.size();
        table.addCopy(draft, candidate);
        double reach = table.ohms(entry) * (1 - SAME_RATIO);
        if (entry == from || table.ohms(entry - 1) < reach) {
            return;
        }
        evaluation.load(entry, fresh);
        for (int earlier = entry - 1; earlier >= from && table.ohms(earlier) >= reach; earlier--) {
            evaluation.load(earlier, kept);
            if (beats() && evaluation.same(earlier, entry)) {
                table.removeLast();
                return;
            }
        }
    }

    private boolean beats() {
        double room = 1 + SAME_RATIO;
        return kept.lowOhms * room >= fresh.lowOhms
                && kept.highOhms <= fresh.highOhms * room
                && kept.powerWatts * room >= fresh.powerWatts
                && Math.abs(kept.bandImaginaryOhms - fresh.bandImaginaryOhms) <= SAME_RATIO * kept.ohms
                && Math.abs(kept.bandRealOhms - fresh.bandRealOhms) <= SAME_RATIO * kept.ohms;
    }

    /** Sorts the numbers of the draft's entries by resistance, by merging. */
    private void sort() {
        int size = draft.size();
        if (order.length < size) {
            order = new int[size + size / 2];
            spare = new int[order.length];
        }
        for (int index = 0; index < size; index++) {
            order[index] = index;
        }
        for (int width = 1; width < size; width *= 2) {
            for (int from = 0; from < size; from += 2 * width) {
                merge(from, Math.min(from + width, size), Math.min(from + 2 * width, size));
            }
            int[] swap = order;
            order = spare;
            spare = swap;
        }
    }

    private void merge(int from, int middle, int to) {
        int left = from;
        int right = middle;
        for (int target = from; target < to; target++) {
            boolean takeLeft = right == to || left < middle && draft.ohms(order[left]) <= draft.ohms(order[right]);
            spare[target] = takeLeft ? order[left++] : order[right++];
        }
    }
}
