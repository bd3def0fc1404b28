// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.DemoData;
import org.ohmstead.jobs.DemoProject;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.jobs.PublishedSheet;
import org.ohmstead.jobs.ReplayOutcome;
import org.ohmstead.jobs.SheetAssembly;
import org.ohmstead.jobs.SheetPublisher;
import org.ohmstead.report.LogCsv;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The main job from beginning to end on the invented demo project. */
@Command(
        name = "demo",
        description = {"${bundle:demo.does}", "", "${bundle:demo.more}", ""})
final class DemoCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Option(names = "--output", paramLabel = "FOLDER", descriptionKey = "demo.output")
    private Path output;

    @Option(names = "--data", paramLabel = "FOLDER", descriptionKey = "demo.data")
    private Path data;

    DemoCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        DemoData source = DemoData.find(data != null ? List.of(data) : DemoData.places(Optional.empty()));
        Path target = Optional.ofNullable(output)
                .or(() -> environment("OHMSTEAD_DEMO_OUTPUT"))
                .orElse(Path.of("ohmstead-demo"));
        DemoProject demo = DemoProject.make(source, target, Ohmstead.version(), new ConsoleProgress(console));
        ProjectFolder folder = demo.folder();
        ReplayOutcome outcome = demo.outcome();
        for (String failure : outcome.failures()) {
            console.message(failure);
        }
        PublishedSheet published = SheetPublisher.publish(
                SheetAssembly.assemble(
                        folder, Ohmstead.version(), Clock.systemUTC().instant()),
                folder.sheetsFolder());
        Path csv = folder.folder().resolve("log.csv");
        try (TestLog log = folder.readLog()) {
            LogCsv.write(log.entries(LogQuery.everything()), csv);
        }
        if (json.wanted()) {
            ObjectNode document = RatingTable.document(published);
            document.put("readings", outcome.logged().size());
            document.put("log", folder.logFile().toString());
            document.put("csv", csv.toString());
            console.json(document);
        } else {
            print(folder, outcome, published, csv);
        }
        return outcome.failures().isEmpty() ? ExitCodes.DONE : ExitCodes.BAD_INPUT;
    }

    private void print(ProjectFolder folder, ReplayOutcome outcome, PublishedSheet published, Path csv) {
        console.line(Texts.of("demo.title", folder.project().title()));
        console.line(Texts.of(
                "demo.readings",
                outcome.logged().size(),
                outcome.logged().stream()
                        .flatMap(entry -> entry.reading().stream())
                        .mapToInt(reading -> reading.provenance().captures().size())
                        .sum()));
        console.line("");
        RatingTable.print(published.sheet(), console);
        console.line("");
        console.line(Texts.of("sheet.html", published.html()));
        console.line("       " + published.pdf());
        console.line(Texts.of("demo.log", folder.logFile()));
        console.line(Texts.of("demo.csv", csv));
    }

    private static Optional<Path> environment(String name) {
        return Optional.ofNullable(System.getenv(name))
                .filter(value -> !value.isBlank())
                .map(Path::of);
    }
}
