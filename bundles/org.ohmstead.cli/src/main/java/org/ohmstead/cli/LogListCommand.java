// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.LogTrust;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Lists the entries of the log. */
@Command(
        name = "list",
        description = "${bundle:log.list.does}",
        footer = {"", "${bundle:log.list.exit}"})
final class LogListCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Option(names = "--mode", paramLabel = "MODE", descriptionKey = "log.list.mode")
    private Mode mode;

    @Option(names = "--step", paramLabel = "STEP", descriptionKey = "log.list.step")
    private String step;

    LogListCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        List<LogEntry> entries;
        Optional<String> fault;
        try (TestLog log = project.open().readLog()) {
            fault = LogTrust.fault(log).map(Hints::withVerify);
            entries = log.entries(LogQuery.everything()).stream()
                    .filter(this::wanted)
                    .toList();
        }
        if (json.wanted()) {
            ObjectNode root = JsonNodeFactory.instance.objectNode();
            ArrayNode list = root.putArray("entries");
            for (LogEntry entry : entries) {
                list.add(EntryJson.summary(entry));
            }
            console.json(root);
        } else {
            print(entries);
        }
        fault.ifPresent(console::message);
        return fault.isPresent() ? ExitCodes.BAD_INPUT : ExitCodes.DONE;
    }

    private boolean wanted(LogEntry entry) {
        if (mode == null && step == null) {
            return true;
        }
        return entry.reading()
                .map(reading -> wanted(reading.mode(), reading.stepId()))
                .or(() -> entry.figures().map(figures -> wanted(figures.mode(), figures.stepId())))
                .orElse(false);
    }

    private boolean wanted(Mode entryMode, String entryStep) {
        return (mode == null || entryMode == mode) && (step == null || entryStep.equals(step));
    }

    private void print(List<LogEntry> entries) {
        TextTable table = TextTable.named("list.columns");
        for (LogEntry entry : entries) {
            if (entry.reading().isEmpty()) {
                String stepId = entry.figures().map(MeasuredFigures::stepId).orElse("");
                table.row(
                        entry.id(), entry.recordedAt().toString(), stepId, "", "", "", "", "", EntryJson.remark(entry));
                continue;
            }
            Reading reading = entry.reading().get();
            for (ChannelReading channel : reading.channels()) {
                table.row(
                        entry.id(),
                        reading.takenAt().toString(),
                        reading.stepId(),
                        channel.channel(),
                        Texts.fixed(channel.supplyVolts(), 2),
                        channel.supplyAmps().isPresent()
                                ? Texts.fixed(channel.supplyAmps().getAsDouble(), 1)
                                : "",
                        Texts.fixed(channel.powerWatts(), 2),
                        Texts.fixed(2 * channel.standardUncertaintyWatts(), 2),
                        entry.voided() ? EntryJson.remark(entry) : Texts.outcome(channel.outcome()));
            }
        }
        table.print(console);
    }
}
