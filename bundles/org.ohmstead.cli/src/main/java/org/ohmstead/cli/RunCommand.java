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
        description = {"${bundle:run.does}", "", "${bundle:run.more}", "", "${bundle:run.more2}", ""},
        footer = {
            "",
            "${bundle:run.exit}",
            "${bundle:run.example}",
            "${bundle:run.example2}",
            "${bundle:run.example3}",
            "${bundle:run.example4}"
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

    @Option(names = "--replay", paramLabel = "FOLDER", descriptionKey = "run.replay")
    private Path replay;

    @Option(names = "--again", descriptionKey = "run.again")
    private boolean again;

    RunCommand(Console console, PluginSource plugins) {
        this.console = console;
        this.plugins = plugins;
    }

    @Override
    public Integer call() throws Exception {
        if (replay != null) {
            if (options.given()) {
                throw new ParameterException(spec.commandLine(), Texts.of("run.replayAlone"));
            }
            return replay();
        }
        if (options.driver().isEmpty() && !options.dryRun()) {
            throw new ParameterException(spec.commandLine(), Texts.of("run.noBench"));
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
        TextTable table = TextTable.named("run.replay.columns");
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
        console.line(Texts.of(
                outcome.alreadyLogged().isEmpty() ? "run.replayed" : "run.replayed.already",
                outcome.logged().size(),
                outcome.alreadyLogged().size()));
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
