// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonSheet;
import org.ohmstead.model.PaperSize;
import org.ohmstead.units.files.WholeFiles;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes a lesson's sheet to print. */
@Command(
        name = "sheet",
        description = {"${bundle:lesson.sheet.does}", ""},
        footer = {"", "${bundle:lesson.sheet.example}"})
final class LessonSheetCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private LessonSource source;

    @Mixin
    private LessonSettings settings;

    @Parameters(index = "0", paramLabel = "ID", descriptionKey = "lesson.sheet.ID")
    private String id;

    @Parameters(index = "1", paramLabel = "OUT.html", descriptionKey = "lesson.sheet.OUT")
    private Path out;

    @Option(names = "--solution", descriptionKey = "lesson.sheet.solution")
    private boolean solution;

    @Option(names = "--paper", paramLabel = "SIZE", defaultValue = "a4", descriptionKey = "lesson.sheet.paper")
    private PaperSize paper;

    LessonSheetCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        Lesson lesson = source.lesson(id, console);
        LessonSheet.Kind kind = solution ? LessonSheet.Kind.SOLUTION : LessonSheet.Kind.EXERCISE;
        String page = LessonSheet.html(lesson, settings.of(lesson), kind, paper);
        WholeFiles.writeText(out, page);
        console.line(Texts.of("lesson.written", out));
        return ExitCodes.DONE;
    }
}
