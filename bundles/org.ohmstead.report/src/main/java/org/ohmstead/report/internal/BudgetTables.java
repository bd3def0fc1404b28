// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.metrology.MethodComparison;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.UncertaintyPart;
import org.ohmstead.report.internal.Evidence.Taken;
import org.ohmstead.testlog.budget.BudgetLine;
import org.ohmstead.testlog.budget.ReadingBudget;

/** Where the uncertainty of the powers comes from. */
final class BudgetTables {
    private static final double SHOWN_SHARE = 0.0005;
    private static final double MOST_FREEDOM = 999;
    private final Evidence evidence;
    private final Speech speech;
    private final PartNames names;

    BudgetTables(Evidence evidence) {
        this.evidence = evidence;
        this.speech = evidence.speech();
        this.names = new PartNames(speech);
    }

    /** Returns the reading whose budget is shown in full: with a budget, continuous, nearest to a load and supply voltage. */
    Optional<Taken> representative(double loadOhms, double supplyVolts) {
        return evidence.standing(PowerKind.CONTINUOUS).stream()
                .filter(taken ->
                        !taken.reading().weakestChannel().uncertaintyParts().isEmpty())
                .min(Comparator.comparingDouble((Taken taken) ->
                                Math.abs(Math.log(taken.reading().nominalLoadOhms() / loadOhms)))
                        .thenComparingDouble(taken -> Math.abs(taken.aimedVolts() - supplyVolts)));
    }

    /** Returns the budget of the weakest channel of a reading. */
    ReadingBudget budgetOf(Taken taken) {
        return ReadingBudget.of(taken.reading(), taken.reading().weakestChannel());
    }

    Table budget(Taken taken, ReadingBudget budget) {
        ChannelReading channel = budget.channel();
        Table.Builder table = Table.titled(speech.text(
                        "budget.title",
                        taken.entryId(),
                        evidence.cell(taken),
                        speech.volts(taken.aimedVolts()),
                        channel.channel(),
                        evidence.power(channel) + "\u00a0W"))
                .text(speech.text("budget.contribution"))
                .brief(speech.text("budget.shape"))
                .number(speech.text("budget.freedom"), "")
                .number(speech.text("budget.ofInput"), "")
                .number(speech.text("budget.sensitivity"), "")
                .number(speech.text("budget.ofPower"), "W")
                .number(speech.text("budget.share"), "%");
        budget.lines().stream()
                .sorted(Comparator.comparingDouble((BudgetLine line) -> Math.abs(line.effectWatts()))
                        .reversed())
                .forEach(line -> table.row(
                        names.of(line.source()),
                        speech.text("shape." + line.shape()),
                        freedom(line.degreesOfFreedom().orElse(Double.POSITIVE_INFINITY)),
                        speech.significant(line.inputStandardUncertainty(), 2) + "\u00a0" + line.inputUnit(),
                        sensitivity(line),
                        speech.significant(Math.abs(line.effectWatts()), 2),
                        share(line.varianceShare(), budget)));
        Estimate result = budget.result();
        table.sum(
                speech.text("budget.combined"),
                "",
                freedom(result.degreesOfFreedom()),
                "",
                "",
                speech.significant(result.standardUncertainty(), 2),
                result.standardUncertainty() > 0 ? "100" : Figures.NONE);
        table.sum(
                speech.text(
                        "budget.expanded",
                        speech.significant(result.coverageFactor(evidence.confidence()), 3),
                        evidence.confidencePercent()),
                "",
                "",
                "",
                "",
                speech.significant(result.expandedUncertainty(evidence.confidence()), 2),
                "");
        return table.build();
    }

    /** Returns what is to be known of the budget, last whether Monte Carlo agrees with it. */
    List<String> notes(ReadingBudget budget) {
        List<String> sentences = new ArrayList<>(budget.notes());
        if (budget.result().standardUncertainty() > 0) {
            MethodComparison compared = budget.monteCarlo(evidence.confidence(), ReadingBudget.USUAL_SEED);
            sentences.add(speech.text(
                    "budget.monteCarlo",
                    speech.stated(
                            compared.monteCarlo().value(), compared.monteCarlo().standardUncertainty()),
                    speech.foreign(compared.sentence("W"))));
        }
        return sentences;
    }

    private String freedom(double degreesOfFreedom) {
        return Double.isInfinite(degreesOfFreedom) || degreesOfFreedom > MOST_FREEDOM
                ? "\u221e"
                : speech.brief(degreesOfFreedom, 3);
    }

    private String sensitivity(BudgetLine line) {
        String unit = line.sensitivityUnit();
        return unit.equals("1") ? "1" : speech.significant(line.sensitivity(), 3) + "\u00a0" + unit;
    }

    private String share(double ratio, ReadingBudget budget) {
        if (!(budget.result().standardUncertainty() > 0)) {
            return Figures.NONE;
        }
        return Math.abs(ratio) < SHOWN_SHARE ? speech.number("<\u00a00.1") : speech.fixed(ratio * 100, 1);
    }

    /** Returns every contribution that plays a part in any reading, with the least and the most that it adds. */
    Table contributions() {
        Map<String, DoubleSummaryStatistics> ranges = new LinkedHashMap<>();
        for (Taken taken : evidence.standing()) {
            for (ChannelReading channel : taken.reading().channels()) {
                collect(channel, ranges);
            }
        }
        Table.Builder table = Table.titled(speech.text("budget.all"))
                .text(speech.text("budget.contribution"))
                .number(speech.text("budget.least"), speech.text("budget.percentOfPower"))
                .number(speech.text("budget.most"), speech.text("budget.percentOfPower"));
        ranges.forEach((source, range) -> table.row(
                names.of(source),
                speech.significant(range.getMin() * 100, 2),
                speech.significant(range.getMax() * 100, 2)));
        return table.build();
    }

    private static void collect(ChannelReading channel, Map<String, DoubleSummaryStatistics> ranges) {
        if (!(channel.powerWatts() > 0)) {
            return;
        }
        List<UncertaintyPart> parts = channel.uncertaintyParts();
        parts.forEach(part -> ranges.computeIfAbsent(part.source(), source -> new DoubleSummaryStatistics())
                .accept(part.standardUncertaintyWatts() / channel.powerWatts()));
    }
}
