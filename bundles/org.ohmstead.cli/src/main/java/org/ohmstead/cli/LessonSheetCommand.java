// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonSheet;
import org.ohmstead.model.PaperSize;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes a lesson's sheet to print. */
@Command(
        name = "sheet",
        description = {
            "Write a lesson as a sheet to print, one HTML file: an exercise with room to write, or with --solution the"
                    + " answer, figures, plots and explanation.",
            ""
        },
        footer = {"", "Example: ohmstead lesson sheet clipping clipping.html --set drive=6 --paper letter"})
final class LessonSheetCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private LessonSource source;

    @Mixin
    private LessonSettings settings;

    @Parameters(index = "0", paramLabel = "ID", description = "Which lesson, as lesson list names it.")
    private String id;

    @Parameters(index = "1", paramLabel = "OUT.html", description = "The file to write; one that is there is replaced.")
    private Path out;

    @Option(names = "--solution", description = "Write the solution for the trainer instead of the exercise.")
    private boolean solution;

    @Option(names = "--paper", paramLabel = "SIZE", defaultValue = "a4", description = "a4 (the default) or letter.")
    private PaperSize paper;

    LessonSheetCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        Lesson lesson = source.lesson(id, console);
        LessonSheet.Kind kind = solution ? LessonSheet.Kind.SOLUTION : LessonSheet.Kind.EXERCISE;
        String page = LessonSheet.html(lesson, settings.of(lesson), kind, paper);
        Files.writeString(out, page, StandardCharsets.UTF_8);
        console.line("Written: " + out);
        return ExitCodes.DONE;
    }
}
