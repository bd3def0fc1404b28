// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.ohmstead.metrology.CoverageInterval;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.metrology.MethodComparison;
import org.ohmstead.metrology.UncertaintyBudget.Correlation;
import org.ohmstead.testlog.budget.BudgetLine;
import org.ohmstead.testlog.budget.ReadingBudget;

/** A reading's budget for people and for machines, with Monte Carlo beside it. */
final class BudgetReport {
    private static final double SHOWN_SHARE = 0.0005;

    private final ReadingBudget budget;
    private final double coverage;
    private final Optional<MethodComparison> compared;

    /**
     * Works out both methods; takes up to a few seconds.
     *
     * @param coverage coverage probability of the intervals
     */
    BudgetReport(ReadingBudget budget, double coverage) {
        this.budget = budget;
        this.coverage = coverage;
        this.compared = budget.result().standardUncertainty() > 0
                ? Optional.of(budget.monteCarlo(coverage, ReadingBudget.USUAL_SEED))
                : Optional.empty();
    }

    void print(Console console, String entry) {
        Estimate result = budget.result();
        console.line(Texts.of("budget.head", entry, budget.channel().channel(), Texts.fixed(result.value(), 2)));
        TextTable table = TextTable.named("budget.columns");
        for (BudgetLine line : budget.lines()) {
            table.row(
                    line.source(),
                    line.shapeWord(),
                    freedom(line.degreesOfFreedom().orElse(Double.POSITIVE_INFINITY)),
                    Texts.two(line.inputStandardUncertainty()),
                    line.inputUnit(),
                    Texts.three(line.sensitivity()),
                    Texts.two(Math.abs(line.effectWatts())),
                    share(line.varianceShare()));
        }
        table.print(console);
        console.line("");
        String percent = Texts.number(100 * coverage) + " %";
        console.line(Texts.of("budget.combined", Texts.two(result.standardUncertainty())));
        console.line(Texts.of("budget.freedom", freedom(result.degreesOfFreedom())));
        console.line(Texts.of("budget.factor", percent, Texts.three(result.coverageFactor(coverage))));
        console.line(Texts.of("budget.expanded", Texts.two(result.expandedUncertainty(coverage))));
        console.line(Texts.of("budget.propagation", interval(result.interval(coverage))));
        compared.ifPresent(both -> {
            console.line(Texts.of(
                    "budget.monteCarlo",
                    interval(both.monteCarloInterval()),
                    Texts.two(both.monteCarlo().standardUncertainty())));
            console.line(both.sentence("W"));
        });
        budget.notes().forEach(console::line);
        console.line("");
    }

    private static String interval(CoverageInterval interval) {
        return Texts.of("budget.interval", Texts.fixed(interval.lower(), 2), Texts.fixed(interval.upper(), 2));
    }

    private static String freedom(double degreesOfFreedom) {
        return Double.isInfinite(degreesOfFreedom) ? Texts.of("budget.infinite") : Texts.three(degreesOfFreedom);
    }

    private static String share(double ratio) {
        return ratio != 0 && Math.abs(ratio) < SHOWN_SHARE ? "<0.1" : Texts.fixed(100 * ratio, 1);
    }

    ObjectNode document() {
        Estimate result = budget.result();
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("channel", budget.channel().channel());
        node.put("powerWatts", result.value());
        node.put("combinedStandardUncertaintyWatts", result.standardUncertainty());
        node.put("loggedStandardUncertaintyWatts", budget.channel().standardUncertaintyWatts());
        putFreedom(node, "effectiveDegreesOfFreedom", result.degreesOfFreedom());
        node.put("coverage", coverage);
        node.put("coverageFactor", result.coverageFactor(coverage));
        node.put("expandedUncertaintyWatts", result.expandedUncertainty(coverage));
        putInterval(node, "interval", result.interval(coverage));
        ArrayNode lines = node.putArray("parts");
        for (BudgetLine line : budget.lines()) {
            ObjectNode item = lines.addObject();
            item.put("source", line.source());
            item.put("input", line.input().name());
            item.put("shape", line.shape().name().toLowerCase(Locale.ROOT));
            putFreedom(item, "degreesOfFreedom", line.degreesOfFreedom().orElse(Double.POSITIVE_INFINITY));
            item.put("inputStandardUncertainty", line.inputStandardUncertainty());
            item.put("inputUnit", line.inputUnit());
            item.put("sensitivity", line.sensitivity());
            item.put("effectWatts", line.effectWatts());
            item.put("varianceShare", line.varianceShare());
            item.put("shared", line.shared());
        }
        ArrayNode correlations = node.putArray("correlations");
        for (Correlation pair : budget.correlations()) {
            correlations
                    .addObject()
                    .put("first", pair.first())
                    .put("second", pair.second())
                    .put("coefficient", pair.coefficient());
        }
        compared.ifPresent(both -> {
            ObjectNode drawn = node.putObject("monteCarlo");
            drawn.put("meanWatts", both.monteCarlo().value());
            drawn.put("standardUncertaintyWatts", both.monteCarlo().standardUncertainty());
            putInterval(drawn, "interval", both.monteCarloInterval());
            drawn.put("toleranceWatts", both.tolerance());
            drawn.put("agrees", both.agrees());
            drawn.put("sentence", both.sentence("W"));
        });
        texts(node.putArray("notes"), budget.notes());
        return node;
    }

    private static void texts(ArrayNode list, List<String> texts) {
        texts.forEach(list::add);
    }

    /** JSON has no infinity: nothing stands for it. */
    private static void putFreedom(ObjectNode node, String name, double degreesOfFreedom) {
        if (Double.isFinite(degreesOfFreedom)) {
            node.put(name, degreesOfFreedom);
        } else {
            node.putNull(name);
        }
    }

    private static void putInterval(ObjectNode node, String name, CoverageInterval interval) {
        node.putObject(name).put("lowerWatts", interval.lower()).put("upperWatts", interval.upper());
    }
}
