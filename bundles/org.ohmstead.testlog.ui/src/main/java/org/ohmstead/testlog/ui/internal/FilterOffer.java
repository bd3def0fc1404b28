// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.Comparator;
import java.util.List;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.search.IndexColumn;

/**
 * What the filter offers to choose from: what occurs in the log.
 *
 * @param loads in ohms, the greatest first
 * @param amplifiers names
 * @param operators names
 */
record FilterOffer(List<Double> loads, List<String> amplifiers, List<String> operators) {
    static final FilterOffer NOTHING = new FilterOffer(List.of(), List.of(), List.of());

    FilterOffer {
        loads = List.copyOf(loads);
        amplifiers = List.copyOf(amplifiers);
        operators = List.copyOf(operators);
    }

    /**
     * Reads the names from the index, in the background.
     *
     * @param entries entries whose loads are offered
     */
    static FilterOffer of(EntryFinder finder, List<LogEntry> entries) throws TestLogException {
        return new FilterOffer(
                entries.stream()
                        .flatMap(entry -> entry.reading().stream())
                        .map(Reading::nominalLoadOhms)
                        .distinct()
                        .sorted(Comparator.reverseOrder())
                        .toList(),
                finder.distinct(IndexColumn.AMPLIFIER),
                finder.distinct(IndexColumn.OPERATOR));
    }
}
