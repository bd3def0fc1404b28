// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.metrology.CoverageInterval;
import org.ohmstead.metrology.MethodComparison;
import org.ohmstead.testlog.budget.BudgetLine;
import org.ohmstead.testlog.budget.ReadingBudget;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Stated;

/** A reading's uncertainty budget in words and figures. */
final class BudgetTexts {
    /** The share of the values that the interval is to cover. */
    static final double COVERAGE = 0.95;

    static final List<String> HEADERS =
            List.of("From", "u (W)", "Share (%)", "u of input", "Sensitivity", "Shape", "\u03bd");
    static final int TEXT_COLUMNS_BEGIN = 5;

    private static final int DIGITS = 3;
    /** From here on Student's t is the normal distribution to all digits that are shown. */
    private static final double MANY = 10_000;

    private BudgetTexts() {}

    /** Returns the lines of the table, the largest share first, and the sum below them. */
    static List<List<String>> rows(ReadingBudget budget) {
        List<BudgetLine> lines = new ArrayList<>(budget.lines());
        lines.sort((one, other) -> Double.compare(Math.abs(other.effectWatts()), Math.abs(one.effectWatts())));
        List<List<String>> rows = new ArrayList<>();
        int places = Figures.places(budget.result().standardUncertainty(), DIGITS);
        for (BudgetLine line : lines) {
            rows.add(List.of(
                    line.source() + (line.shared() ? "" : " *"),
                    Figures.fixed(Math.abs(line.effectWatts()), places),
                    Figures.fixed(100 * line.varianceShare(), 1),
                    line.inputStandardUncertainty() > 0
                            ? Numbers.digits(line.inputStandardUncertainty(), 2) + " " + line.inputUnit()
                            : "0 " + line.inputUnit(),
                    Numbers.digits(line.sensitivity(), DIGITS)
                            + (line.sensitivityUnit().equals("1") ? "" : " " + line.sensitivityUnit()),
                    line.shapeWord(),
                    degrees(line.degreesOfFreedom())));
        }
        rows.add(List.of(
                "Together",
                Figures.fixed(budget.result().standardUncertainty(), places),
                Figures.fixed(100, 1),
                "",
                "",
                "",
                degrees(budget)));
        return rows;
    }

    /** Returns the effective degrees of freedom. */
    static String degrees(ReadingBudget budget) {
        return degrees(OptionalDouble.of(budget.effectiveDegreesOfFreedom()));
    }

    private static String degrees(OptionalDouble degreesOfFreedom) {
        double shown = degreesOfFreedom.orElse(Double.POSITIVE_INFINITY);
        return shown >= MANY ? "\u221e" : Numbers.digits(shown, DIGITS);
    }

    /** Returns what comes out, line by line. */
    static List<String> result(ReadingBudget budget) {
        double expanded = budget.expandedWatts(COVERAGE);
        double factor = budget.coverageFactor(COVERAGE);
        return List.of(
                "Power "
                        + Stated.of(budget.result().value(), expanded, alone -> Numbers.digits(alone, 4))
                                .text()
                        + " W at 95 % coverage, k = " + Numbers.digits(factor, DIGITS),
                "Effective degrees of freedom " + degrees(budget) + " (Welch-Satterthwaite)",
                "Law of propagation, 95 %: " + interval(budget.interval(COVERAGE), expanded));
    }

    /** Returns the other method's interval. */
    static String monteCarlo(MethodComparison comparison) {
        CoverageInterval interval = comparison.monteCarloInterval();
        return "Monte Carlo, 95 %: " + interval(interval, interval.width() / 2) + ", u = "
                + Numbers.digits(comparison.monteCarlo().standardUncertainty(), 2) + " W";
    }

    /** Returns an interval in watts to the places of its half width. */
    static String interval(CoverageInterval interval, double half) {
        int places = Figures.places(half, 2);
        return Figures.fixed(interval.lower(), places) + " to " + Figures.fixed(interval.upper(), places) + " W";
    }

    /** Returns whether the methods agree, or what to do when they do not, in whole sentences. */
    static String verdict(MethodComparison comparison) {
        return Numbers.inSentence(comparison.sentence("W"));
    }
}
