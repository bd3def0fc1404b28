// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.jobs.ReplayJob;
import org.ohmstead.jobs.ReplayOutcome;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.LogEntry;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Carries out the plan of a project. */
@Command(
        name = "run",
        description = {
            "Carry out the plan of a project from recorded captures: analyse them and log a reading for each step.",
            "",
            "The folder given with --replay holds the captures and recordings.json, which says of each capture its step, its drive"
                    + " level and what the bench's meters showed. Captures are kept in the project under the hash of their content."
                    + " Steps whose captures are already in the log are left out, so an interrupted run can simply be started again.",
            ""
        },
        footer = {
            "",
            "Exit code 3 when a step could not be evaluated; the others are logged all the same.",
            "Example: ohmstead run kestrel.ohmstead --replay recordings"
        })
final class RunCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Option(
            names = "--replay",
            paramLabel = "FOLDER",
            required = true,
            description = "Where the recorded captures lie.")
    private Path replay;

    @Option(names = "--again", description = "Log steps again whose captures are already in the log.")
    private boolean again;

    RunCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        ProjectFolder folder = project.open();
        ReplayOutcome outcome =
                new ReplayJob(folder, Ohmstead.version()).run(replay, again, new ConsoleProgress(console));
        if (json.wanted()) {
            console.json(document(outcome));
        } else {
            print(outcome);
        }
        outcome.failures().forEach(console::message);
        return outcome.failures().isEmpty() ? ExitCodes.DONE : ExitCodes.BAD_INPUT;
    }

    private void print(ReplayOutcome outcome) {
        TextTable table = new TextTable(
                "entry", "step", "channel", ">supply V", ">power W", ">\u00b1 W (k=2)", ">THD_F %", "outcome");
        for (LogEntry entry : outcome.logged()) {
            Reading reading = entry.reading().orElseThrow();
            for (ChannelReading channel : reading.channels()) {
                table.row(
                        entry.id(),
                        reading.stepId(),
                        channel.channel(),
                        Texts.fixed(channel.supplyVolts(), 2),
                        Texts.fixed(channel.powerWatts(), 2),
                        Texts.fixed(2 * channel.standardUncertaintyWatts(), 2),
                        Texts.fixed(100 * channel.thdFRatio(), 3),
                        Texts.outcome(channel.outcome()));
            }
        }
        if (!outcome.logged().isEmpty()) {
            table.print(console);
        }
        console.line(outcome.logged().size() + " readings logged"
                + (outcome.alreadyLogged().isEmpty()
                        ? "."
                        : ", " + outcome.alreadyLogged().size() + " steps were in the log already."));
    }

    private static ObjectNode document(ReplayOutcome outcome) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        ArrayNode logged = root.putArray("logged");
        for (LogEntry entry : outcome.logged()) {
            logged.addObject()
                    .put("id", entry.id())
                    .put("step", entry.reading().orElseThrow().stepId())
                    .put("hash", entry.hash());
        }
        ArrayNode already = root.putArray("alreadyLogged");
        outcome.alreadyLogged().forEach(already::add);
        ArrayNode failures = root.putArray("failures");
        outcome.failures().forEach(failures::add);
        return root;
    }
}
