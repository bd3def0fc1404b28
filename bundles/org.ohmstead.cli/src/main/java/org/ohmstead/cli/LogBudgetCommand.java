// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.budget.ReadingBudget;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows where the uncertainty of a reading comes from. */
@Command(
        name = "budget",
        description = {"${bundle:log.budget.does}", "", "${bundle:log.budget.more}", ""},
        footer = {"", "${bundle:log.budget.example}"})
final class LogBudgetCommand implements Callable<Integer> {
    private static final double LEAST_COVERAGE = 0.5;
    private static final double MOST_COVERAGE = 0.9999;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1", paramLabel = "ENTRY", descriptionKey = "log.budget.ENTRY")
    private String id;

    @Option(names = "--channel", paramLabel = "NAME", descriptionKey = "log.budget.channel")
    private String channel;

    @Option(names = "--coverage", paramLabel = "PERCENT", descriptionKey = "log.budget.coverage")
    private String coverage;

    LogBudgetCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        ProjectFolder folder = project.open();
        double covered =
                coverage == null ? folder.project().sheet().confidence() : Quantities.ratio(coverage, "--coverage");
        if (covered < LEAST_COVERAGE || covered > MOST_COVERAGE) {
            throw new InputException(Texts.of("budget.coverage", coverage));
        }
        LogEntry entry = entry(folder);
        Reading reading =
                entry.reading().orElseThrow(() -> new InputException(Texts.of("budget.noReading", id, project.path())));
        List<ChannelReading> channels = reading.channels().stream()
                .filter(each -> channel == null || each.channel().equals(channel))
                .toList();
        if (channels.isEmpty()) {
            throw new InputException(Texts.of(
                    "budget.noChannel",
                    id,
                    channel,
                    String.join(
                            ", ",
                            reading.channels().stream()
                                    .map(ChannelReading::channel)
                                    .toList())));
        }
        ArrayNode list = JsonNodeFactory.instance.arrayNode();
        for (ChannelReading each : channels) {
            BudgetReport report = new BudgetReport(ReadingBudget.of(reading, each), covered);
            if (json.wanted()) {
                list.add(report.document());
            } else {
                report.print(console, entry.voided() ? Texts.of("budget.voided", id) : id);
            }
        }
        if (json.wanted()) {
            ObjectNode root = JsonNodeFactory.instance.objectNode();
            root.put("entry", entry.id());
            root.put("voided", entry.voided());
            root.set("channels", list);
            console.json(root);
        }
        return ExitCodes.DONE;
    }

    private LogEntry entry(ProjectFolder folder) throws Exception {
        try (TestLog log = folder.readLog()) {
            return log.entry(id).orElseThrow(() -> new InputException(Texts.of("log.noEntry", id, project.path())));
        }
    }
}
