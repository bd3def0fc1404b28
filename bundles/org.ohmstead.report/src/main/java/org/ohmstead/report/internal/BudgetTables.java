// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.UncertaintyPart;
import org.ohmstead.report.internal.Evidence.Taken;

/** Where the uncertainty of the powers comes from. */
final class BudgetTables {
    private static final double SHOWN_SHARE = 0.0005;
    private final Evidence evidence;

    BudgetTables(Evidence evidence) {
        this.evidence = evidence;
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

    Table budget(Taken taken) {
        ChannelReading channel = taken.reading().weakestChannel();
        double square = channel.standardUncertaintyWatts() * channel.standardUncertaintyWatts();
        Table.Builder table = Table.titled("Entry " + taken.entryId() + ": " + taken.cell() + ", "
                        + Figures.volts(taken.aimedVolts()) + ", channel " + channel.channel() + ", "
                        + evidence.power(channel) + "\u00a0W")
                .text("Contribution")
                .number("Standard uncertainty", "W")
                .number("Share of variance", "%");
        channel.uncertaintyParts().stream()
                .sorted(Comparator.comparingDouble(UncertaintyPart::standardUncertaintyWatts)
                        .reversed())
                .forEach(part -> table.row(
                        part.source(),
                        Figures.significant(part.standardUncertaintyWatts(), 2),
                        share(part.standardUncertaintyWatts(), square)));
        double factor = Estimate.of(0, 1).coverageFactor(evidence.confidence());
        table.sum(
                "Combined standard uncertainty",
                Figures.significant(channel.standardUncertaintyWatts(), 2),
                square > 0 ? "100" : Figures.NONE);
        table.sum(
                "Expanded uncertainty, k\u00a0=\u00a0" + Figures.significant(factor, 3) + ", "
                        + evidence.confidencePercent() + "\u00a0% coverage",
                Figures.significant(factor * channel.standardUncertaintyWatts(), 2),
                "");
        return table.build();
    }

    private static String share(double part, double square) {
        if (!(square > 0)) {
            return Figures.NONE;
        }
        double ratio = part * part / square;
        return ratio < SHOWN_SHARE ? "<\u00a00.1" : Figures.fixed(ratio * 100, 1);
    }

    /** Returns every contribution that plays a part in any reading, with the least and the most that it adds. */
    Table contributions() {
        Map<String, DoubleSummaryStatistics> ranges = new LinkedHashMap<>();
        for (Taken taken : evidence.standing()) {
            for (ChannelReading channel : taken.reading().channels()) {
                collect(channel, ranges);
            }
        }
        Table.Builder table = Table.titled("All readings")
                .text("Contribution")
                .number("Least", "% of power")
                .number("Most", "% of power");
        ranges.forEach((source, range) -> table.row(
                source, Figures.significant(range.getMin() * 100, 2), Figures.significant(range.getMax() * 100, 2)));
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
