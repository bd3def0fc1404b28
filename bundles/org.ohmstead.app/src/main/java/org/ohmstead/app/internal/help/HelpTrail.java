// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Where the reader has been: back and forward as in a book with two bookmarks. */
final class HelpTrail {
    private static final int LONGEST = 100;

    private final List<Stop> stops = new ArrayList<>();
    private int at = -1;

    /**
     * A page that was shown.
     *
     * @param page the page
     * @param query what the search was for while it was shown; empty without one
     * @param list whether it is the list of what a search found
     */
    record Stop(HelpPage page, String query, boolean list) {}

    /** Adds a stop after the present one; what lay ahead is forgotten. A list of finds takes the place of one before it. */
    void add(Stop stop) {
        boolean replaces = stop.list() && current().filter(Stop::list).isPresent();
        if (!replaces) {
            at++;
        }
        stops.subList(at, stops.size()).clear();
        stops.add(stop);
        if (stops.size() > LONGEST) {
            stops.remove(0);
            at--;
        }
    }

    /** Returns what is shown now. */
    Optional<Stop> current() {
        return at < 0 ? Optional.empty() : Optional.of(stops.get(at));
    }

    boolean canGoBack() {
        return at > 0;
    }

    boolean canGoForward() {
        return at + 1 < stops.size();
    }

    /** Goes so many stops, -1 for back, 1 for forward; stays where there is none. */
    Optional<Stop> go(int stepCount) {
        int wished = at + stepCount;
        if (wished >= 0 && wished < stops.size()) {
            at = wished;
        }
        return current();
    }
}
