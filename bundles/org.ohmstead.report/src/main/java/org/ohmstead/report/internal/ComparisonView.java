// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.List;

/**
 * The comparison sheet as the template sees it.
 *
 * @param conclusion one sentence
 * @param subjects what is compared, numbered
 * @param groups one for each mode and load that can be compared
 * @param prices what a watt costs; without rows when no price is known
 * @param confidence in percent, with its sign
 * @param remarks the laboratory's own words; may be empty
 */
public record ComparisonView(
        String conclusion, Table subjects, List<Group> groups, Table prices, String confidence, String remarks) {
    /** Copies the list. */
    public ComparisonView {
        groups = List.copyOf(groups);
    }

    /**
     * The powers of all in one mode into one load.
     *
     * @param id for references within the page
     * @param title what is compared
     * @param charts power against supply volts; empty where there is nothing to draw
     * @param powers of each at the customary voltages
     * @param differenceTitle what the differences are taken at
     * @param differences of pairs; without rows when there is no pair
     */
    public record Group(
            String id, String title, List<Chart> charts, Table powers, String differenceTitle, Table differences) {
        /** Copies the list. */
        public Group {
            charts = List.copyOf(charts);
        }
    }
}
