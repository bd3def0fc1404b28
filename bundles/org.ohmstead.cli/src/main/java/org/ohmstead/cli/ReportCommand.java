// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.jobs.PublishedSheet;
import org.ohmstead.jobs.SheetAssembly;
import org.ohmstead.jobs.SheetPublisher;
import org.ohmstead.jobs.SheetWish;
import org.ohmstead.model.PaperSize;
import org.ohmstead.model.SheetDesign;
import org.ohmstead.report.ResultsSheet;
import org.ohmstead.units.text.Language;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Judges the ratings and publishes the results sheet. */
@Command(
        name = "report",
        description = {
            "Hold each rating against the measurement at the rating's own supply voltage, and write the results sheet"
                    + " as HTML and PDF.",
            ""
        },
        footer = {
            "",
            "Exit code 1 when a rating falls short.",
            "Example: ohmstead report kestrel.ohmstead",
            "Example: ohmstead report kestrel.ohmstead --design bench --paper letter",
            "Example: ohmstead report kestrel.ohmstead --design comparison --with heron.ohmstead"
        })
final class ReportCommand implements Callable<Integer> {
    private static final String LAYOUT = "$.sheet.layout.";

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

    @Option(
            names = "--design",
            paramLabel = "DESIGN",
            description = "How the sheet is laid out: bench (one page), full, comparison or handout (for teaching)"
                    + " (default: as the project says).")
    private String design;

    @Option(
            names = "--paper",
            paramLabel = "PAPER",
            description = "What the PDF is set for: a4 or letter (default: as the project says).")
    private String paper;

    @Option(
            names = "--language",
            paramLabel = "LANGUAGE",
            description = "Of the sheet: en or de (default: that of the machine).")
    private String language;

    @Option(
            names = "--with",
            paramLabel = "PROJECT",
            description = "A project that the comparison takes in; give it several times for several.")
    private List<Path> others = new ArrayList<>();

    @Option(
            names = "--period",
            paramLabel = "PERIOD",
            description = "A period that the comparison tells apart: 2024, 2024-03, 2023-05-01..2024 or 2024..; give it"
                    + " several times for several.")
    private List<String> periods = new ArrayList<>();

    ReportCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        ProjectFolder folder = project.open();
        Path target = output == null ? folder.sheetsFolder() : output;
        ResultsSheet sheet = SheetAssembly.assemble(
                folder, wish(), Ohmstead.version(), Clock.systemUTC().instant());
        PublishedSheet published = SheetPublisher.publish(sheet, target);
        sheet.problems().stream()
                .filter(problem -> problem.where().startsWith(LAYOUT))
                .forEach(problem -> console.message(problem.what() + " " + problem.remedy()));
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

    private SheetWish wish() throws InputException {
        if (!Language.SPOKEN.stream().map(Locale::getLanguage).toList().contains(language == null ? "en" : language)) {
            throw new InputException("--language is " + language + "; it must be en or de.");
        }
        return new SheetWish(
                choice(SheetDesign.class, design, "--design", "bench, full, comparison or handout"),
                choice(PaperSize.class, paper, "--paper", "a4 or letter"),
                Optional.ofNullable(language).map(Locale::forLanguageTag),
                others.stream().map(path -> path.toAbsolutePath().toString()).toList(),
                periods);
    }

    private static <E extends Enum<E>> Optional<E> choice(Class<E> type, String word, String option, String allowed)
            throws InputException {
        if (word == null) {
            return Optional.empty();
        }
        for (E each : type.getEnumConstants()) {
            if (each.name().toLowerCase(Locale.ROOT).equals(word)) {
                return Optional.of(each);
            }
        }
        throw new InputException(option + " is " + word + "; it must be " + allowed + ".");
    }
}
