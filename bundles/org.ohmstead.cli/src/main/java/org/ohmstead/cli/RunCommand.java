// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.jobs.ReplayJob;
import org.ohmstead.jobs.ReplayOutcome;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.load.NetworkPartSharing;
import org.ohmstead.measure.engine.Catalog;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.LogEntry;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Carries out the plan of a project. */
@Command(
        name = "run",
        description = {
            "Carry out the plan of a project on a bench, and log a result for each step as soon as it is there.",
            "",
            "--driver names the bench; try a plan on the simulated one first. Before anything is fed all precautions are looked at:"
                    + " what forbids a step is said, and a warning needs a yes. What the log holds of the same plan already is left"
                    + " out, so after a crash or Ctrl-C, which makes the bench safe at once, the same command goes on behind the last"
                    + " entry.",
            "",
            "With --replay instead, the folder holds captures that were recorded before and recordings.json, which says of each capture"
                    + " its step, its drive level and what the bench's meters showed. Captures are kept in the project under the hash of"
                    + " their content.",
            ""
        },
        footer = {
            "",
            "Exit code 1 when something of the plan is still to be done at the end; with --replay 3 when a step could not be evaluated.",
            "Example: ohmstead run kestrel.ohmstead --driver simulated --dry-run",
            "Example: ohmstead run kestrel.ohmstead --driver simulated --yes --json",
            "Example: ohmstead run kestrel.ohmstead --driver typed --set \"driver.output=volts and distortion\" --step stereo-4ohm",
            "Example: ohmstead run kestrel.ohmstead --replay recordings"
        })
final class RunCommand implements Callable<Integer> {
    private final Console console;
    private final PluginSource plugins;

    @Spec
    private CommandSpec spec;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Mixin
    private RunOptions options;

    @Option(names = "--replay", paramLabel = "FOLDER", description = "Where captures lie that were recorded before.")
    private Path replay;

    @Option(names = "--again", description = "Measure and log also what the log holds already.")
    private boolean again;

    RunCommand(Console console, PluginSource plugins) {
        this.console = console;
        this.plugins = plugins;
    }

    @Override
    public Integer call() throws Exception {
        if (replay != null) {
            if (options.given()) {
                throw new ParameterException(
                        spec.commandLine(),
                        "--replay takes the readings from a folder; of the other options it takes only --again and --json.");
            }
            return replay();
        }
        if (options.driver().isEmpty() && !options.dryRun()) {
            throw new ParameterException(
                    spec.commandLine(),
                    "Missing the bench: name it with --driver, such as --driver simulated (see: ohmstead plugins),"
                            + " or name a folder of recordings with --replay.");
        }
        ProjectFolder folder = project.open();
        Catalog catalog = plugins.catalog(new ConsoleOperator(console));
        return options.dryRun()
                ? new PlanDryRun(console, catalog, folder, options, again).show(json.wanted())
                : new PlanOnBench(console, catalog, folder, options, again, json.wanted()).run();
    }

    private int replay() throws Exception {
        ProjectFolder folder = project.open();
        ReplayOutcome outcome;
        Optional<SharingState> sharedLog;
        try (HandingOver handingOver = HandingOver.begin(folder)) {
            outcome = new ReplayJob(folder, Ohmstead.version())
                    .withSharing(new NetworkPartSharing())
                    .run(replay, again, new ConsoleProgress(console));
            handingOver.appended(outcome.logged().size());
            sharedLog = handingOver.end();
        }
        if (json.wanted()) {
            ObjectNode document = document(outcome);
            HandingOver.fill(document, sharedLog);
            console.json(document);
        } else {
            print(outcome);
            HandingOver.say(console, sharedLog);
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
