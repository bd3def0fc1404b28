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
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Stated;

/** A reading's uncertainty budget in words and figures. */
final class BudgetTexts {
    private static final Messages TEXTS = Messages.of(BudgetTexts.class);

    /** The share of the values that the interval is to cover. */
    static final double COVERAGE = 0.95;

    /** The keys of what stands above the columns. */
    static final List<String> HEADERS =
            List.of("from", "uncertainty", "share", "input", "sensitivity", "shape", "degrees");

    static final int TEXT_COLUMNS_BEGIN = 5;

    private static final int DIGITS = 3;
    /** From here on Student's t is the normal distribution to all digits that are shown. */
    private static final double MANY = 10_000;

    private BudgetTexts() {}

    /** Returns what stands above the columns. */
    static List<String> headers() {
        return HEADERS.stream().map(key -> TEXTS.text("budget." + key)).toList();
    }

    /** Returns the lines of the table, the largest share first, and the sum below them. */
    static List<List<String>> rows(ReadingBudget budget) {
        List<BudgetLine> lines = new ArrayList<>(budget.lines());
        lines.sort((one, other) -> Double.compare(Math.abs(other.effectWatts()), Math.abs(one.effectWatts())));
        List<List<String>> rows = new ArrayList<>();
        int places = Figures.places(budget.result().standardUncertainty(), DIGITS);
        for (BudgetLine line : lines) {
            rows.add(List.of(
                    line.label() + (line.shared() ? "" : " *"),
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
                TEXTS.text("budget.together"),
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
                TEXTS.text(
                        "budget.power",
                        Stated.of(budget.result().value(), expanded, alone -> Numbers.digits(alone, 4))
                                .text(),
                        Numbers.digits(factor, DIGITS)),
                TEXTS.text("budget.effective", degrees(budget)),
                TEXTS.text("budget.law", interval(budget.interval(COVERAGE), expanded)));
    }

    /** Returns the other method's interval. */
    static String monteCarlo(MethodComparison comparison) {
        CoverageInterval interval = comparison.monteCarloInterval();
        return TEXTS.text(
                "budget.monteCarlo",
                interval(interval, interval.width() / 2),
                Numbers.digits(comparison.monteCarlo().standardUncertainty(), 2));
    }

    /** Returns an interval in watts to the places of its half width. */
    static String interval(CoverageInterval interval, double half) {
        int places = Figures.places(half, 2);
        return TEXTS.text(
                "budget.interval", Figures.fixed(interval.lower(), places), Figures.fixed(interval.upper(), places));
    }

    /** Returns whether the methods agree, or what to do when they do not, in whole sentences. */
    static String verdict(MethodComparison comparison) {
        return Numbers.inSentence(comparison.sentence("W"));
    }
}
