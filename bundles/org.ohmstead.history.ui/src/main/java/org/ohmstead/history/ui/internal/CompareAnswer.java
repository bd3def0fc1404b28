// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.ohmstead.history.Comparison;
import org.ohmstead.history.PricePerWatt;
import org.ohmstead.history.SubjectDifference;
import org.ohmstead.history.SubjectPower;
import org.ohmstead.history.Trend;

/**
 * What a comparison gave.
 *
 * @param comparison the powers and their differences; empty when nothing could be compared
 * @param prices what a watt costs, of those whose price is known
 * @param problems whole sentences about what could not be done
 * @param loadsOhms nominal loads that there are readings of, rising
 * @param indexPeriods periods of the price index, rising; empty without one
 * @param figureIds figures whose trend can be shown
 * @param trends of the chosen figure
 */
record CompareAnswer(
        Optional<Comparison> comparison,
        List<PricePerWatt> prices,
        List<String> problems,
        List<Double> loadsOhms,
        List<String> indexPeriods,
        List<String> figureIds,
        List<Trend> trends) {
    /** Nothing was asked. */
    static final CompareAnswer NOTHING =
            new CompareAnswer(Optional.empty(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of());

    CompareAnswer {
        prices = List.copyOf(prices);
        problems = List.copyOf(problems);
        loadsOhms = List.copyOf(new TreeSet<>(loadsOhms));
        indexPeriods = List.copyOf(indexPeriods);
        figureIds = List.copyOf(figureIds);
        trends = List.copyOf(trends);
    }

    /** Returns the powers that could be compared. */
    List<SubjectPower> powers() {
        return comparison.map(Comparison::powers).orElse(List.of());
    }

    /** Returns the difference of the first power and another one; empty for the first itself. */
    Optional<SubjectDifference> toFirst(SubjectPower power) {
        return comparison.stream()
                .flatMap(each -> each.differences().stream())
                .filter(each ->
                        each.first().equals(powers().get(0)) && each.second().equals(power))
                .findFirst();
    }

    /** Returns what a watt of a subject costs, when known. */
    Optional<PricePerWatt> price(SubjectPower power) {
        return prices.stream().filter(each -> each.power().equals(power)).findFirst();
    }
}
