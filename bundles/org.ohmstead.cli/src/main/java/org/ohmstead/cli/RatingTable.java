// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import org.ohmstead.curves.RatingOutcome;
import org.ohmstead.curves.RatingResult;
import org.ohmstead.curves.VerdictWords;
import org.ohmstead.jobs.PublishedSheet;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.VerdictKind;
import org.ohmstead.report.ResultsSheet;

/** The ratings beside what was measured, for the words that judge them. */
final class RatingTable {
    private RatingTable() {}

    /** Prints the table for people. */
    static void print(ResultsSheet sheet, Console console) {
        print(sheet.ratings(), sheet.project().sheet(), console);
    }

    /** Prints the table of ratings for people, with the rule below it. */
    static void print(List<RatingResult> ratings, SheetSettings settings, Console console) {
        int confidencePercent = (int) Math.round(100 * settings.confidence());
        TextTable table = TextTable.named("ratings.columns", confidencePercent);
        for (RatingResult result : ratings) {
            table.row(
                    result.rating().id(),
                    Texts.mode(result.rating().mode()),
                    Texts.number(result.rating().loadOhms()),
                    Texts.kind(result.rating().kind()),
                    Texts.number(result.rating().supplyVolts()),
                    Texts.number(result.rating().powerWatts()),
                    result.outcome().map(RatingTable::measured).orElse("-"),
                    result.outcome()
                            .map(outcome -> String.format(Locale.ROOT, "%+.2f", outcome.differenceDb()))
                            .orElse("-"),
                    result.outcome()
                            .map(outcome -> probability(outcome.probabilityMet()))
                            .orElse("-"),
                    result.outcome()
                            .map(outcome -> Texts.verdict(outcome.verdict()))
                            .orElse(Texts.of("ratings.notTested")),
                    result.outcome().map(VerdictWords::riskPercent).orElse(""),
                    result.remark());
        }
        table.print(console);
        console.line("");
        console.line(VerdictWords.sentence(settings.rule()));
        console.line(Texts.of("ratings.risk"));
    }

    private static String measured(RatingOutcome outcome) {
        return Texts.fixed(outcome.powerWatts(), 1) + " \u00b1 " + Texts.fixed(outcome.expandedUncertaintyWatts(), 1);
    }

    private static String probability(double probability) {
        if (probability > 0.999) {
            return ">0.999";
        }
        return probability < 0.001 ? "<0.001" : Texts.fixed(probability, 3);
    }

    /** Returns a published sheet as one document for machines. */
    static ObjectNode document(PublishedSheet published) {
        ResultsSheet sheet = published.sheet();
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        put(root, sheet.ratings(), sheet.project().sheet());
        root.put("logHeadHash", sheet.log().headHash());
        root.put("html", published.html().toString());
        root.put("pdf", published.pdf().toString());
        return root;
    }

    /** Puts ratings into a document, with the rule that they were judged by. */
    static void put(ObjectNode root, List<RatingResult> ratings, SheetSettings settings) {
        root.put("confidence", settings.confidence());
        ObjectNode rule = root.putObject("verdictRule");
        rule.put("kind", settings.rule().kind().name());
        if (settings.rule().kind() != VerdictKind.SIMPLE_ACCEPTANCE) {
            rule.put("riskRatio", settings.rule().riskRatio());
        }
        ArrayNode list = root.putArray("ratings");
        for (RatingResult result : ratings) {
            ObjectNode node = list.addObject();
            node.put("id", result.rating().id());
            node.put("kind", result.rating().kind().name());
            node.put("mode", result.rating().mode().name());
            node.put("loadOhms", result.rating().loadOhms());
            node.put("supplyVolts", result.rating().supplyVolts());
            node.put("ratedWatts", result.rating().powerWatts());
            if (result.outcome().isPresent()) {
                RatingOutcome outcome = result.outcome().get();
                node.put("channel", outcome.channel());
                node.put("measuredWatts", outcome.powerWatts());
                node.put("standardUncertaintyWatts", outcome.standardUncertaintyWatts());
                node.put("expandedUncertaintyWatts", outcome.expandedUncertaintyWatts());
                node.put("differenceDb", outcome.differenceDb());
                node.put("probabilityMet", outcome.probabilityMet());
                node.put("verdict", outcome.verdict().name());
                outcome.consumersRisk().ifPresent(risk -> node.put("consumersRisk", risk));
                outcome.producersRisk().ifPresent(risk -> node.put("producersRisk", risk));
                node.put("extrapolated", outcome.extrapolated());
            } else {
                node.put("verdict", "NOT_TESTED");
            }
            node.put("remark", result.remark());
        }
    }
}
