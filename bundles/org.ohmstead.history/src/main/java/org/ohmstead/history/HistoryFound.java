// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.search.Found;
import org.ohmstead.testlog.search.IndexedEntry;

/**
 * What was found in several sources, in one order. Pages are read when they are asked for; one far down costs the reading of those before
 * it once.
 */
public final class HistoryFound {
    private static final int BLOCK = 256;

    private final List<String> names;
    private final List<Found> found;
    private final Comparator<IndexedEntry> order;
    private final int size;
    /** How far each source was used at the beginning of each block. */
    private final List<int[]> starts = new ArrayList<>();

    HistoryFound(List<String> names, List<Found> found, Comparator<IndexedEntry> order) {
        this.names = List.copyOf(names);
        this.found = List.copyOf(found);
        this.order = order;
        this.size = found.stream().mapToInt(Found::size).sum();
        starts.add(new int[found.size()]);
    }

    /** Returns how many entries were found. */
    public int size() {
        return size;
    }

    /**
     * Returns some of them in their order.
     *
     * @param from place of the first, counted from 0
     * @param count how many at most, at least 0
     * @return fewer when there are no more
     * @throws TestLogException when an index was damaged meanwhile; then search again
     */
    public synchronized List<HistoryEntry> page(int from, int count) throws TestLogException {
        if (from < 0 || count < 0) {
            throw new IllegalArgumentException(
                    "from is " + from + " and count is " + count + "; neither may be below 0");
        }
        int to = (int) Math.min(size, (long) from + count);
        List<HistoryEntry> page = new ArrayList<>();
        for (int block = from / BLOCK; block * BLOCK < to; block++) {
            List<HistoryEntry> entries = block(block);
            int first = Math.max(0, from - block * BLOCK);
            int last = Math.min(entries.size(), to - block * BLOCK);
            page.addAll(entries.subList(Math.min(first, last), last));
        }
        return List.copyOf(page);
    }

    private List<HistoryEntry> block(int block) throws TestLogException {
        while (starts.size() <= block) {
            merge(starts.size() - 1);
        }
        return merge(block);
    }

    /** Puts one block together, and notes where the next begins. */
    private List<HistoryEntry> merge(int block) throws TestLogException {
        int[] used = starts.get(block).clone();
        List<List<IndexedEntry>> heads = new ArrayList<>();
        for (int source = 0; source < found.size(); source++) {
            heads.add(found.get(source).page(used[source], BLOCK));
        }
        int[] at = new int[used.length];
        List<HistoryEntry> merged = new ArrayList<>();
        int next = next(heads, at);
        while (next >= 0 && merged.size() < BLOCK) {
            merged.add(new HistoryEntry(names.get(next), heads.get(next).get(at[next])));
            at[next]++;
            next = next(heads, at);
        }
        if (starts.size() == block + 1) {
            starts.add(IntStream.range(0, used.length).map(i -> used[i] + at[i]).toArray());
        }
        return merged;
    }

    private int next(List<List<IndexedEntry>> heads, int[] at) {
        int best = -1;
        for (int source = 0; source < heads.size(); source++) {
            boolean more = at[source] < heads.get(source).size();
            if (more
                    && (best < 0
                            || order.compare(
                                            heads.get(source).get(at[source]),
                                            heads.get(best).get(at[best]))
                                    < 0)) {
                best = source;
            }
        }
        return best;
    }
}
