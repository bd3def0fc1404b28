// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.report.LogCsv;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The main job from beginning to end on the invented demo project. */
@Command(
        name = "demo",
        description = {
            "Run the main job on the invented demo project: captures of a simulated amplifier in, judged results sheet out.",
            "",
            "The demo project is copied into a folder of its own, which each demo makes anew; nothing else is touched.",
            ""
        })
final class DemoCommand implements Callable<Integer> {
    private static final String PROJECT_NAME = "larkspur" + ProjectFile.FOLDER_SUFFIX;
    /** Marks a folder as the demo's own, so that nobody's project is ever cleared away. */
    private static final String MARKER = ".ohmstead-demo";

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Option(names = "--output", paramLabel = "FOLDER", description = "Where to put the demo's project.")
    private Path output;

    @Option(names = "--data", paramLabel = "FOLDER", description = "Where the demo data lie.")
    private Path data;

    DemoCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        Path source = dataFolder();
        Path target = Optional.ofNullable(output)
                .or(() -> environment("OHMSTEAD_DEMO_OUTPUT"))
                .orElse(Path.of("ohmstead-demo"));
        Path projectFolder = freshCopy(source.resolve(PROJECT_NAME), target);
        ProjectFolder folder = ProjectFolder.open(projectFolder);
        ReplayJob.Outcome outcome = new ReplayJob(folder, console).run(source.resolve("recordings"), false);
        for (String failure : outcome.failures()) {
            console.message(failure);
        }
        Published published = Published.publish(folder, projectFolder.resolve("sheets"), Clock.systemUTC());
        Path csv = projectFolder.resolve("log.csv");
        try (TestLog log = folder.readLog()) {
            LogCsv.write(log.entries(LogQuery.everything()), csv);
        }
        if (json.wanted()) {
            ObjectNode document = published.document();
            document.put("readings", outcome.logged().size());
            document.put("log", folder.logFile().toString());
            document.put("csv", csv.toString());
            console.json(document);
        } else {
            print(folder, outcome, published, csv);
        }
        return outcome.failures().isEmpty() ? ExitCodes.DONE : ExitCodes.BAD_INPUT;
    }

    private void print(ProjectFolder folder, ReplayJob.Outcome outcome, Published published, Path csv) {
        console.line(folder.project().title() + " (invented; captures from a circuit simulator)");
        console.line(outcome.logged().size() + " readings made and logged from "
                + outcome.logged().stream()
                        .flatMap(entry -> entry.reading().stream())
                        .mapToInt(reading -> reading.provenance().captures().size())
                        .sum()
                + " captures");
        console.line("");
        published.printRatings(console);
        console.line("");
        console.line("sheet  " + published.html());
        console.line("       " + published.pdf());
        console.line("log    " + folder.logFile());
        console.line("csv    " + csv);
    }

    private Path dataFolder() throws InputException {
        List<Path> places = data != null
                ? List.of(data)
                : Stream.concat(environment("OHMSTEAD_DEMO_DATA").stream(), Stream.of(Path.of("demo-data")))
                        .toList();
        return places.stream()
                .filter(place -> Files.isDirectory(place.resolve(PROJECT_NAME)))
                .findFirst()
                .orElseThrow(() -> new InputException("The demo data were not found (looked in " + places
                        + "). Start the demo from Ohmstead's own folder, or"
                        + " name the folder in the environment variable OHMSTEAD_DEMO_DATA."));
    }

    private static Optional<Path> environment(String name) {
        return Optional.ofNullable(System.getenv(name))
                .filter(value -> !value.isBlank())
                .map(Path::of);
    }

    private static Path freshCopy(Path source, Path target) throws IOException, InputException {
        Path marker = target.resolve(MARKER);
        if (Files.exists(target)) {
            boolean empty;
            try (Stream<Path> content = Files.list(target)) {
                empty = content.findAny().isEmpty();
            }
            if (!empty && !Files.exists(marker)) {
                throw new InputException("The folder " + target
                        + " holds something that is not the demo's. Name another with --output; nothing was changed.");
            }
            clear(target.resolve(PROJECT_NAME));
        }
        Path project = Files.createDirectories(target.resolve(PROJECT_NAME));
        Files.writeString(marker, "Ohmstead's demo makes this folder anew each time.\n");
        Files.copy(source.resolve(ProjectFile.FILE_NAME), project.resolve(ProjectFile.FILE_NAME));
        return project;
    }

    private static void clear(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        List<Path> content;
        try (Stream<Path> walk = Files.walk(folder)) {
            content = walk.sorted(Comparator.reverseOrder()).toList();
        }
        for (Path path : content) {
            Files.delete(path);
        }
    }
}
