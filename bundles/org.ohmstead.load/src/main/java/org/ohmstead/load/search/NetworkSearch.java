// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;

/**
 * The exact search for series-parallel networks near a resistance. It goes from few parts to many. The networks of small sets of pieces
 * are listed once, by resistance; larger ones are met in the middle, from two lists that fit together inside the window that the best
 * ones found so far leave open. Resistances that doubles cannot tell apart are compared as exact fractions of the decimal values.
 * Networks that differ only in order, or in which of equal pieces sits where, count once. Bridges are not looked at.
 *
 * <p>Memory: at most two million list entries of 16 bytes and as many of 24 bytes while one is made, and some 30 MB for the sets of pieces. One thread; the same request
 * gives the same answer.
 */
public final class NetworkSearch {
    private static final int REPORT_EVERY = 16;

    private final SearchRequest request;
    private final Stop stop;
    private final DoubleConsumer progress;
    private final Kinds kinds;
    private final Catalogue catalogue;
    private final Collector collector;
    private final NetworkWalk walk;
    private final int mostParts;
    private final int mostListedParts;
    private boolean listing = true;

    private NetworkSearch(
            SearchRequest request, BooleanSupplier cancelled, DoubleConsumer progress, int mostListedParts) {
        this.request = request;
        this.progress = progress;
        this.mostListedParts = mostListedParts;
        stop = new Stop(cancelled, request.timeLimit());
        kinds = new Kinds(request);
        catalogue = new Catalogue(kinds, request.maxParts());
        collector = new Collector(request, kinds);
        walk = new NetworkWalk(catalogue, collector, stop, request.maxParts());
        mostParts = Math.min(request.maxParts(), request.stock().pieces());
    }

    /**
     * Searches until every network allowed is accounted for, the time is over, or it is cancelled; it then gives the best so far and says
     * up to how many parts that is proven.
     *
     * @param request what is looked for
     * @param cancelled asked every now and then from this thread; true ends the search
     * @param progress told every now and then from this thread how much is done, 0 to 1, by numbers of parts
     */
    public static SearchResult run(SearchRequest request, BooleanSupplier cancelled, DoubleConsumer progress) {
        Checks.present(request, "request");
        Checks.present(cancelled, "cancelled");
        Checks.present(progress, "progress");
        return new NetworkSearch(request, cancelled, progress, Integer.MAX_VALUE).search();
    }

    /** Searches with lists of up to so many parts only, and meets larger networks in the middle. */
    static SearchResult run(SearchRequest request, int mostListedParts) {
        return new NetworkSearch(request, () -> false, done -> {}, mostListedParts).search();
    }

    private SearchResult search() {
        int exactParts = 0;
        boolean memoryLimit = false;
        while (exactParts < mostParts && !memoryLimit && !stop.getAsBoolean()) {
            int parts = exactParts + 1;
            listing = listing && parts <= mostListedParts && catalogue.listNext(stop);
            // Beyond this two groups that make up a larger one may both be unlisted.
            memoryLimit = parts > 2 * catalogue.listedParts() + 1;
            if (!memoryLimit && !stop.getAsBoolean() && visit(parts)) {
                exactParts = parts;
            }
        }
        SearchResult.Ending ending = ending(exactParts, memoryLimit);
        List<Candidate> candidates =
                collector.ranked().stream().map(Find::candidate).toList();
        Optional<Candidate> nearest = collector.nearest().map(Find::candidate);
        SearchReport report = new SearchReport(request, mostParts, exactParts, ending);
        return new SearchResult(
                candidates,
                collector.pareto().stream().map(Find::candidate).toList(),
                nearest,
                exactParts,
                ending,
                report.message(candidates, nearest, collector.strongest().map(Find::candidate)));
    }

    private SearchResult.Ending ending(int exactParts, boolean memoryLimit) {
        if (exactParts == mostParts) {
            return SearchResult.Ending.COMPLETE;
        }
        return stop.ending()
                .orElseGet(() -> memoryLimit ? SearchResult.Ending.MEMORY_LIMIT : SearchResult.Ending.COMPLETE);
    }

    private boolean visit(int parts) {
        long[] numbers = Bags.numbers(kinds.limits(), parts, Long.MAX_VALUE / parts);
        int listed = catalogue.listedParts();
        double all = numbers[parts];
        for (int openParts = listed + 1; openParts < parts; openParts++) {
            all += numbers[openParts];
        }
        double done = 0;
        for (Bags bags = new Bags(kinds.limits(), parts); bags.hasNext(); done++) {
            Bag bag = bags.next();
            boolean whole =
                    parts <= listed ? walk.visit(catalogue.group(bag)) : walk.visitPairs(catalogue.newGroup(bag));
            if (!whole || !goesOn(parts, done, all)) {
                return false;
            }
        }
        for (int openParts = listed + 1; openParts < parts; openParts++) {
            for (Bags bags = new Bags(kinds.limits(), openParts); bags.hasNext(); done++) {
                if (!visitOpen(catalogue.newGroup(bags.next()), parts - openParts) || !goesOn(parts, done, all)) {
                    return false;
                }
            }
        }
        progress.accept((double) parts / mostParts);
        return true;
    }

    /** Joins the networks of an open group to those of every listed group of so many parts that the stock still has. */
    private boolean visitOpen(Group open, int listedParts) {
        int[] left = kinds.limits();
        for (int kind = 0; kind < left.length; kind++) {
            left[kind] -= open.bag.count(kind);
        }
        for (Bags bags = new Bags(left, listedParts); bags.hasNext(); ) {
            if (!walk.visitOpen(open, catalogue.group(bags.next()))) {
                return false;
            }
        }
        return true;
    }

    private boolean goesOn(int parts, double done, double all) {
        if (done % REPORT_EVERY != 0) {
            return true;
        }
        progress.accept((parts - 1 + done / all) / mostParts);
        return !stop.getAsBoolean();
    }
}
