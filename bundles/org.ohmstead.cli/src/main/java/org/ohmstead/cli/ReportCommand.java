// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.jobs.PublishedSheet;
import org.ohmstead.jobs.SheetAssembly;
import org.ohmstead.jobs.SheetPublisher;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Judges the ratings and publishes the results sheet. */
@Command(
        name = "report",
        description = {
            "Hold each rating against the measurement at the rating's own supply voltage, and write the results sheet as HTML and PDF.",
            ""
        },
        footer = {"", "Exit code 1 when a rating falls short.", "Example: ohmstead report kestrel.ohmstead"})
final class ReportCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Option(
            names = "--output",
            paramLabel = "FOLDER",
            description = "Where to put the sheet (default: the folder of sheets in the project).")
    private Path output;

    ReportCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        ProjectFolder folder = project.open();
        Path target = output == null ? folder.sheetsFolder() : output;
        PublishedSheet published = SheetPublisher.publish(
                SheetAssembly.assemble(
                        folder, Ohmstead.version(), Clock.systemUTC().instant()),
                target);
        if (json.wanted()) {
            console.json(RatingTable.document(published));
        } else {
            RatingTable.print(published.sheet(), console);
            console.line("");
            console.line("sheet  " + published.html());
            console.line("       " + published.pdf());
        }
        return published.anyFallsShort() ? ExitCodes.FELL_SHORT : ExitCodes.DONE;
    }
}
