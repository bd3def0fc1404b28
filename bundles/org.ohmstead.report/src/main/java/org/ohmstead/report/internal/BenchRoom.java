// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.List;

/**
 * How much of the bench sheet's one page each part may take.
 *
 * @param typePixels size of the type in CSS pixels
 * @param ratings how many ratings at most
 * @param powers how many rows of powers at most
 * @param settings how many rows of readings at most
 * @param terms whether the terms of a rating stand below the maker's words for it
 * @param chartRatio height of the charts over their width; 0 for no charts
 * @param characters how long a text of the user may be
 */
record BenchRoom(
        double typePixels, int ratings, int powers, int settings, boolean terms, double chartRatio, int characters) {
    /** All that there is, for a screen. */
    static final BenchRoom ENDLESS = new BenchRoom(14, 1000, 1000, 1000, true, 0.66, 2000);

    /** For a page, the most roomy first; the last fits whatever the project holds. */
    static final List<BenchRoom> OF_A_PAGE = List.of(
            new BenchRoom(10.4, 40, 40, 40, true, 0.66, 300),
            new BenchRoom(9.8, 40, 40, 40, true, 0.58, 200),
            new BenchRoom(9.4, 40, 40, 40, false, 0.58, 200),
            new BenchRoom(9, 40, 40, 40, false, 0.56, 160),
            new BenchRoom(8.6, 40, 40, 40, false, 0.55, 160),
            new BenchRoom(8.6, 16, 16, 6, false, 0.54, 120),
            new BenchRoom(8.6, 12, 14, 4, false, 0.54, 100),
            new BenchRoom(8.6, 10, 10, 4, false, 0.52, 80),
            new BenchRoom(8.6, 8, 8, 0, false, 0.52, 60),
            new BenchRoom(8.4, 5, 6, 0, false, 0, 40));
}
