// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.ohmstead.metrology.Contribution;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.metrology.UncertaintyBudget;
import org.ohmstead.metrology.UncertaintyBudget.Correlation;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.budget.BudgetLine;
import org.ohmstead.testlog.budget.ReadingBudget;

/**
 * The difference of two readings' powers with its uncertainty (GUM 5.2.2). What both share, such as one meter's calibration, has the same
 * error in both and cancels in part; it counts as fully correlated when the same instruments with the same calibrations were used.
 */
final class PairDifference {
    private final ReadingBudget first;
    private final ReadingBudget second;
    private final List<Contribution> contributions = new ArrayList<>();
    private final List<Correlation> correlations = new ArrayList<>();

    private PairDifference(ReadingBudget first, ReadingBudget second) {
        this.first = first;
        this.second = second;
    }

    /** Returns the power of the second less that of the first, in watts, with its standard uncertainty. */
    static Estimate of(PairSide first, PairSide second) {
        PairDifference difference =
                new PairDifference(ReadingBudget.of(first.channel()), ReadingBudget.of(second.channel()));
        difference.add("1 ", -1, difference.first);
        difference.add("2 ", 1, difference.second);
        if (sameInstruments(first.reading(), second.reading())) {
            difference.correlateAcross();
        }
        double watts = second.channel().powerWatts() - first.channel().powerWatts();
        return new UncertaintyBudget(watts, difference.contributions, difference.correlations).combined();
    }

    /** Returns whether two readings were taken with the same instruments, none calibrated in between. */
    static boolean sameInstruments(Reading one, Reading other) {
        return !one.provenance().instruments().isEmpty()
                && new HashSet<>(one.provenance().instruments())
                        .equals(new HashSet<>(other.provenance().instruments()));
    }

    private void add(String side, double sign, ReadingBudget budget) {
        for (Contribution line : budget.gum().contributions()) {
            contributions.add(new Contribution(
                    side + line.name(),
                    sign * line.sensitivity(),
                    line.standardUncertainty(),
                    line.degreesOfFreedom()));
        }
        for (Correlation each : budget.correlations()) {
            correlations.add(new Correlation(side + each.first(), side + each.second(), each.coefficient()));
        }
    }

    private void correlateAcross() {
        for (BudgetLine one : first.lines()) {
            for (BudgetLine other : second.lines()) {
                double coefficient = one.shared() && other.shared() ? coefficient(one, other) : 0;
                if (coefficient != 0) {
                    correlations.add(new Correlation("1 " + one.source(), "2 " + other.source(), coefficient));
                }
            }
        }
    }

    /** One error is the same in both readings; what it has to do with another holds across them too. */
    private double coefficient(BudgetLine one, BudgetLine other) {
        if (one.source().equals(other.source())) {
            return one.input() == other.input() ? 1 : 0;
        }
        return first.correlations().stream()
                .filter(each -> Set.of(each.first(), each.second()).equals(Set.of(one.source(), other.source())))
                .mapToDouble(Correlation::coefficient)
                .findFirst()
                .orElse(0);
    }
}
