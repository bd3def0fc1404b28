// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Optional;

/**
 * Says in whole sentences what a search has shown.
 *
 * @param request what was looked for
 * @param mostParts most parts that the stock and the request allow
 * @param exactParts parts up to which the answer is proven
 * @param ending why the search ended
 */
record SearchReport(SearchRequest request, int mostParts, int exactParts, SearchResult.Ending ending) {
    private static final MathContext DIGITS = new MathContext(5);
    private static final double PERCENT = 100;
    private static final double MILLIS_PER_SECOND = 1000;

    String message(List<Candidate> candidates, Optional<Candidate> nearest, Optional<Candidate> strongest) {
        if (request.stock().items().isEmpty()) {
            return "The stock holds no resistors; enter those at hand first.";
        }
        String reached = reached();
        if (!candidates.isEmpty() || nearest.isEmpty()) {
            return reached;
        }
        return reached + " " + nothing(nearest.get(), strongest);
    }

    private String reached() {
        String exact =
                exactParts == 0 ? "Nothing is proven yet." : "The answer is exact up to " + parts(exactParts) + ".";
        return switch (ending) {
            case COMPLETE -> mostParts < request.maxParts()
                    ? "Every network of the " + parts(mostParts)
                            + " in the stock is accounted for; the answer is exact."
                    : "Every network of up to " + parts(mostParts) + " is accounted for; the answer is exact.";
            case CANCELLED -> "The search was cancelled. " + exact + more();
            case TIME_LIMIT -> "The time limit of " + number(request.timeLimit().toMillis() / MILLIS_PER_SECOND)
                    + " s is over. " + exact + more();
            case MEMORY_LIMIT -> exact
                    + " Networks of more parts were not looked at, because their lists would not fit into the memory"
                    + " that the search allows itself; a stock with fewer kinds of resistors lets it go further.";
        };
    }

    private String more() {
        return " Of networks with " + parts(exactParts + 1) + " some may have been looked at, of larger ones none.";
    }

    private String nothing(Candidate nearest, Optional<Candidate> strongest) {
        double target = request.targetOhms();
        boolean reachable = request.errorLimitRatio().isEmpty()
                || Math.abs(nearest.errorRatio()) <= request.errorLimitRatio().getAsDouble();
        String near = "The nearest is " + Ordering.text(nearest.network()) + " with " + number(nearest.ohms())
                + " ohm (" + signedPercent(nearest.errorRatio()) + ").";
        if (!reachable) {
            String limit = number(PERCENT * request.errorLimitRatio().getAsDouble());
            return "No network comes within " + limit + " % of " + number(target) + " ohm. " + near + remedy(nearest);
        }
        if (request.powerWatts().isPresent() && strongest.isPresent()) {
            return power(strongest.get());
        }
        return "No network meets the request. " + near + " Allow a larger error, less power or a narrower band.";
    }

    private String power(Candidate strongest) {
        String wanted = number(request.powerWatts().orElseThrow());
        String text = Ordering.text(strongest.network());
        if (strongest.powerLimitWatts().isEmpty()) {
            return "No network near enough is known to take " + wanted + " W, because " + text
                    + " has a resistor without a power rating; enter the ratings.";
        }
        double limit = strongest.powerLimitWatts().getAsDouble();
        if (limit >= request.powerWatts().orElseThrow()) {
            return "No network that takes " + wanted
                    + " W meets the band; use resistors of less inductance or a narrower band.";
        }
        return "No network near enough takes " + wanted + " W. The strongest is " + text + " with " + number(limit)
                + " W; add resistors, allow more parts, or use stronger or better cooled ones.";
    }

    private String remedy(Candidate nearest) {
        double target = request.targetOhms();
        if (nearest.ohms() < target) {
            return " Add a resistor of " + number(target - nearest.ohms()) + " ohm in series with it.";
        }
        return " Add a resistor of " + number(1 / (1 / target - 1 / nearest.ohms())) + " ohm in parallel to it.";
    }

    private static String parts(int count) {
        return count == 1 ? "1 part" : count + " parts";
    }

    private static String signedPercent(double ratio) {
        return (ratio < 0 ? "" : "+") + number(PERCENT * ratio) + " %";
    }

    static String number(double value) {
        return new BigDecimal(value, DIGITS).stripTrailingZeros().toPlainString();
    }
}
