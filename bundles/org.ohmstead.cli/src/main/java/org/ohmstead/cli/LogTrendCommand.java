// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.concurrent.Callable;
import org.ohmstead.history.HistoryException;
import org.ohmstead.history.Period;
import org.ohmstead.history.Trend;
import org.ohmstead.history.TrendPoint;
import org.ohmstead.jobs.LogTrust;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows a figure over time. */
@Command(
        name = "trend",
        description = {"${bundle:log.trend.does}", "", "${bundle:log.trend.more}", ""},
        footer = {"", "${bundle:log.trend.example}"})
final class LogTrendCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1", paramLabel = "FIGURE", descriptionKey = "log.trend.FIGURE")
    private String figureId;

    @Option(names = "--step", paramLabel = "STEP", descriptionKey = "log.trend.step")
    private String step;

    @Option(names = "--channel", paramLabel = "CHANNEL", descriptionKey = "log.trend.channel")
    private String channel;

    @Option(names = "--period", paramLabel = "PERIOD", descriptionKey = "log.trend.period")
    private String period;

    LogTrendCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        ProjectFolder folder = project.open();
        Period wanted = period(period);
        double confidence = folder.project().sheet().confidence();
        List<LogEntry> entries;
        try (TestLog log = folder.readLog()) {
            entries = LogTrust.trustedEntries(log).stream()
                    .filter(entry -> folder.project().reasonSetAside(entry.id()).isEmpty())
                    .toList();
        }
        List<Trend> trends = Trend.of(entries, figureId, wanted, 1 - confidence).stream()
                .filter(trend -> step == null || trend.line().stepId().equals(step))
                .filter(trend -> channel == null || trend.line().channel().equals(channel))
                .toList();
        if (trends.isEmpty()) {
            throw new InputException(Texts.of("trend.none", figureId));
        }
        if (json.wanted()) {
            console.json(document(trends, confidence));
        } else {
            print(trends);
        }
        return ExitCodes.DONE;
    }

    static Period period(String text) throws InputException {
        try {
            return text == null ? Period.ALWAYS : Period.parse(text);
        } catch (HistoryException wrong) {
            throw new InputException(wrong.getMessage());
        }
    }

    private void print(List<Trend> trends) {
        for (Trend trend : trends) {
            console.line(trend.line().words());
            TextTable table = TextTable.named("trend.columns", trend.line().figureId(), unit(trend));
            for (TrendPoint point : trend.points()) {
                table.row(
                        "  " + point.entryId(),
                        point.takenAt().toString(),
                        Texts.number(point.value()),
                        point.standardUncertainty().isPresent()
                                ? Texts.two(2 * point.standardUncertainty().getAsDouble())
                                : "");
            }
            table.print(console);
            console.line("  " + trend.sentence());
            console.line("");
        }
    }

    private static String unit(Trend trend) {
        return trend.line().unit().isEmpty() ? "" : " " + trend.line().unit();
    }

    private static ObjectNode document(List<Trend> trends, double confidence) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("confidence", confidence);
        ArrayNode list = root.putArray("trends");
        for (Trend trend : trends) {
            ObjectNode node = list.addObject();
            node.put("figure", trend.line().figureId());
            node.put("unit", trend.line().unit());
            node.put("step", trend.line().stepId());
            node.put("channel", trend.line().channel());
            node.put("at", trend.line().at());
            node.put("specimen", trend.line().specimen());
            node.put("sentence", trend.sentence());
            trend.drift().ifPresent(line -> node.putObject("drift")
                    .put("per", trend.timeUnit())
                    .put("slope", line.slope().value())
                    .put("standardUncertainty", line.slope().standardUncertainty())
                    .put("drifts", line.drifts()));
            trend.test().ifPresent(test -> node.putObject("trendTest")
                    .put("tau", test.tau())
                    .put("pValue", test.pValue())
                    .put("medianSlope", test.medianSlope()));
            ArrayNode points = node.putArray("points");
            for (TrendPoint point : trend.points()) {
                ObjectNode item = points.addObject()
                        .put("entryId", point.entryId())
                        .put("takenAt", point.takenAt().toString())
                        .put("value", point.value());
                point.standardUncertainty().ifPresent(each -> item.put("standardUncertainty", each));
            }
        }
        return root;
    }
}
