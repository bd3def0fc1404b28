// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.List;

/**
 * Where the uncertainty of the powers comes from.
 *
 * @param budget the budget of one reading; empty when none has one
 * @param bars the same as bars; empty when there is none
 * @param notes whole sentences about it
 * @param contributions of all readings
 */
public record UncertaintySection(List<Table> budget, List<Chart> bars, List<String> notes, Table contributions) {
    /** Copies the lists. */
    public UncertaintySection {
        budget = List.copyOf(budget);
        bars = List.copyOf(bars);
        notes = List.copyOf(notes);
    }
}
