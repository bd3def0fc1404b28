// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.List;
import java.util.Optional;

/**
 * What a search found.
 *
 * @param candidates networks that meet the request: smallest |error| first, then fewest parts, tightest worst case, most power
 * @param pareto networks that meet the request, within its error limit or 1 % where it sets none, of which none is beaten: no other one
 *     is at least as good in |error|, worst case, power limit and number of parts and better in one of them. Of networks alike in all four
 *     it holds one. Ordered as the candidates.
 * @param nearest the network nearest to the target, whether or not it meets the limits; empty only when there is nothing to build from
 *     or the search ended before it began
 * @param exactUpToParts number of parts up to which every network has been accounted for, so that the answer is proven
 * @param ending why the search ended
 * @param message the same in whole sentences, and what to do when nothing was found
 */
public record SearchResult(
        List<Candidate> candidates,
        List<Candidate> pareto,
        Optional<Candidate> nearest,
        int exactUpToParts,
        Ending ending,
        String message) {
    /** Why a search ended. */
    public enum Ending {
        /** Every network of the parts allowed has been accounted for. */
        COMPLETE,
        /** It was cancelled. */
        CANCELLED,
        /** Its time was over. */
        TIME_LIMIT,
        /** More parts would need more memory than the search allows itself. */
        MEMORY_LIMIT
    }

    public SearchResult {
        candidates = List.copyOf(candidates);
        pareto = List.copyOf(pareto);
        Checks.present(nearest, "nearest");
        Checks.within(exactUpToParts, 0, Integer.MAX_VALUE, "exactUpToParts");
        Checks.present(ending, "ending");
        Checks.present(message, "message");
    }
}
