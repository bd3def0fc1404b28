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
        description = {"${bundle:report.does}", ""},
        footer = {
            "",
            "${bundle:report.exit}",
            "${bundle:report.example}",
            "${bundle:report.example2}",
            "${bundle:report.example3}"
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

    @Option(names = "--output", paramLabel = "FOLDER", descriptionKey = "report.output")
    private Path output;

    @Option(names = "--design", paramLabel = "DESIGN", descriptionKey = "report.design")
    private String design;

    @Option(names = "--paper", paramLabel = "PAPER", descriptionKey = "report.paper")
    private String paper;

    @Option(names = "--language", paramLabel = "LANGUAGE", descriptionKey = "report.language")
    private String language;

    @Option(names = "--with", paramLabel = "PROJECT", descriptionKey = "report.with")
    private List<Path> others = new ArrayList<>();

    @Option(names = "--period", paramLabel = "PERIOD", descriptionKey = "report.period")
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
            console.line(Texts.of("sheet.html", published.html()));
            console.line("       " + published.pdf());
        }
        return published.anyFallsShort() ? ExitCodes.FELL_SHORT : ExitCodes.DONE;
    }

    private SheetWish wish() throws InputException {
        if (!Language.SPOKEN.stream().map(Locale::getLanguage).toList().contains(language == null ? "en" : language)) {
            throw new InputException(Texts.of("report.language", language));
        }
        return new SheetWish(
                choice(SheetDesign.class, design, "--design", "report.design"),
                choice(PaperSize.class, paper, "--paper", "report.paper"),
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
        throw new InputException(Texts.of(allowed, option, word));
    }
}
