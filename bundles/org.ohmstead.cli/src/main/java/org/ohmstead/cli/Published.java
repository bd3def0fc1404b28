// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.ohmstead.curves.LoadCurve;
import org.ohmstead.curves.LoadCurves;
import org.ohmstead.curves.RatingJudge;
import org.ohmstead.curves.RatingOutcome;
import org.ohmstead.curves.RatingResult;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.report.HtmlSheet;
import org.ohmstead.report.LogStamp;
import org.ohmstead.report.PdfSheet;
import org.ohmstead.report.ReportException;
import org.ohmstead.report.ResultsSheet;
import org.ohmstead.report.SheetReading;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VoidNote;

/**
 * A results sheet made from a project and its log.
 *
 * @param sheet what it says
 * @param html the file for a browser
 * @param pdf the file for printing
 */
record Published(ResultsSheet sheet, Path html, Path pdf) {

    /** Judges the ratings and writes the sheet into the project's folder of sheets, or another. */
    static Published publish(ProjectFolder folder, Path outputFolder, Clock clock)
            throws InputException, TestLogException, ReportException, IOException {
        ResultsSheet sheet;
        String head;
        try (TestLog log = folder.readLog()) {
            List<LogEntry> entries = ProjectFolder.trustedEntries(log);
            head = log.headHash();
            sheet = sheet(folder, entries, head, clock.instant());
        }
        Files.createDirectories(outputFolder);
        String name = "sheet-" + sheet.producedAt().atZone(ZoneOffset.UTC).toLocalDate() + "-" + head.substring(0, 8);
        Path html = outputFolder.resolve(name + ".html");
        Path pdf = outputFolder.resolve(name + ".pdf");
        HtmlSheet.write(sheet, html);
        PdfSheet.write(sheet, pdf);
        return new Published(sheet, html, pdf);
    }

    private static ResultsSheet sheet(ProjectFolder folder, List<LogEntry> entries, String head, Instant now) {
        Project project = folder.project();
        List<LoadCurve> curves = LoadCurves.fit(ProjectFolder.validReadings(entries));
        List<RatingResult> ratings = RatingJudge.judge(
                project.amplifier().ratings(), curves, project.sheet().confidence());
        List<SheetReading> readings = entries.stream()
                .filter(entry -> entry.reading().isPresent())
                .map(entry -> new SheetReading(
                        entry.id(), entry.reading().get(), entry.voidedBy().map(VoidNote::reason)))
                .toList();
        // A calibration that ran out after the last reading says nothing against the sheet.
        LocalDate lastDay = readings.stream()
                .map(reading -> reading.reading().takenAt())
                .max(Comparator.naturalOrder())
                .orElse(now)
                .atZone(ZoneOffset.UTC)
                .toLocalDate();
        List<Problem> problems = CheckCommand.problems(folder, lastDay);
        return new ResultsSheet(
                project,
                readings,
                curves,
                ratings,
                new LogStamp(head, entries.size(), true),
                Ohmstead.version(),
                now,
                problems);
    }

    boolean anyFallsShort() {
        return sheet.ratings().stream()
                .flatMap(result -> result.outcome().stream())
                .anyMatch(outcome -> outcome.verdict() == Verdict.FALLS_SHORT);
    }

    void printRatings(Console console) {
        int confidencePercent = (int) Math.round(100 * sheet.project().sheet().confidence());
        TextTable table = new TextTable(
                "rating",
                "mode",
                ">load \u03a9",
                "power",
                ">at V",
                ">rated W",
                ">measured W (" + confidencePercent + " %)",
                ">dB",
                ">P(met)",
                "verdict",
                "remark");
        for (RatingResult result : sheet.ratings()) {
            table.row(
                    result.rating().id(),
                    Texts.mode(result.rating().mode()),
                    Texts.number(result.rating().loadOhms()),
                    Texts.kind(result.rating().kind()),
                    Texts.number(result.rating().supplyVolts()),
                    Texts.number(result.rating().powerWatts()),
                    result.outcome().map(Published::measured).orElse("-"),
                    result.outcome()
                            .map(outcome -> String.format(Locale.ROOT, "%+.2f", outcome.differenceDb()))
                            .orElse("-"),
                    result.outcome()
                            .map(outcome -> probability(outcome.probabilityMet()))
                            .orElse("-"),
                    result.outcome()
                            .map(outcome -> Texts.verdict(outcome.verdict()))
                            .orElse("not tested"),
                    result.remark());
        }
        table.print(console);
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

    ObjectNode document() {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("confidence", sheet.project().sheet().confidence());
        ArrayNode ratings = root.putArray("ratings");
        for (RatingResult result : sheet.ratings()) {
            ObjectNode node = ratings.addObject();
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
                node.put("extrapolated", outcome.extrapolated());
            } else {
                node.put("verdict", "NOT_TESTED");
            }
            node.put("remark", result.remark());
        }
        root.put("logHeadHash", sheet.log().headHash());
        root.put("html", html.toString());
        root.put("pdf", pdf.toString());
        return root;
    }
}
