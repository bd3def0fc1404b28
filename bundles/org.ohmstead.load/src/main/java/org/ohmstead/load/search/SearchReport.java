// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Optional;
import org.ohmstead.units.text.Messages;

/**
 * Says in whole sentences what a search has shown.
 *
 * @param request what was looked for
 * @param mostParts most parts that the stock and the request allow
 * @param exactParts parts up to which the answer is proven
 * @param ending why the search ended
 */
record SearchReport(SearchRequest request, int mostParts, int exactParts, SearchResult.Ending ending) {
    private static final Messages TEXTS = Messages.of(SearchReport.class);

    private static final MathContext DIGITS = new MathContext(5);
    private static final double PERCENT = 100;
    private static final double MILLIS_PER_SECOND = 1000;

    String message(List<Candidate> candidates, Optional<Candidate> nearest, Optional<Candidate> strongest) {
        if (request.stock().items().isEmpty()) {
            return TEXTS.text("search.emptyStock");
        }
        String reached = reached();
        if (!candidates.isEmpty() || nearest.isEmpty()) {
            return reached;
        }
        return reached + " " + nothing(nearest.get(), strongest);
    }

    private String reached() {
        String exact = exactParts == 0 ? TEXTS.text("search.unproven") : counted("search.exact", exactParts);
        return switch (ending) {
            case COMPLETE ->
                counted(mostParts < request.maxParts() ? "search.wholeStock" : "search.complete", mostParts);
            case CANCELLED -> TEXTS.text("search.cancelled", exact, more());
            case TIME_LIMIT ->
                TEXTS.text(
                        "search.timeLimit", number(request.timeLimit().toMillis() / MILLIS_PER_SECOND), exact, more());
            case MEMORY_LIMIT -> TEXTS.text("search.memoryLimit", exact);
        };
    }

    private String more() {
        return counted("search.more", exactParts + 1);
    }

    private String nothing(Candidate nearest, Optional<Candidate> strongest) {
        double target = request.targetOhms();
        boolean reachable = request.errorLimitRatio().isEmpty()
                || Math.abs(nearest.errorRatio()) <= request.errorLimitRatio().getAsDouble();
        String near = TEXTS.text(
                "search.nearest",
                Ordering.text(nearest.network()),
                number(nearest.ohms()),
                signedPercent(nearest.errorRatio()));
        if (!reachable) {
            String limit = number(PERCENT * request.errorLimitRatio().getAsDouble());
            return TEXTS.text("search.notNear", limit, number(target), near, remedy(nearest));
        }
        if (request.powerWatts().isPresent() && strongest.isPresent()) {
            return power(strongest.get());
        }
        return TEXTS.text("search.none", near);
    }

    private String power(Candidate strongest) {
        String wanted = number(request.powerWatts().orElseThrow());
        String text = Ordering.text(strongest.network());
        if (strongest.powerLimitWatts().isEmpty()) {
            return TEXTS.text("search.unrated", wanted, text);
        }
        double limit = strongest.powerLimitWatts().getAsDouble();
        if (limit >= request.powerWatts().orElseThrow()) {
            return TEXTS.text("search.band", wanted);
        }
        return TEXTS.text("search.weak", wanted, text, number(limit));
    }

    private String remedy(Candidate nearest) {
        double target = request.targetOhms();
        if (nearest.ohms() < target) {
            return TEXTS.text("search.addSeries", number(target - nearest.ohms()));
        }
        return TEXTS.text("search.addParallel", number(1 / (1 / target - 1 / nearest.ohms())));
    }

    private static String counted(String key, int count) {
        return TEXTS.text(key + (count == 1 ? ".one" : ".many"), Integer.toString(count));
    }

    private static String signedPercent(double ratio) {
        return (ratio < 0 ? "" : "+") + number(PERCENT * ratio) + " %";
    }

    static String number(double value) {
        return new BigDecimal(value, DIGITS).stripTrailingZeros().toPlainString();
    }
}
