// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import org.ohmstead.lessons.Controls;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonSheet;
import org.ohmstead.model.PaperSize;
import org.ohmstead.units.files.WholeFiles;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;

/** Writes sheets of lessons in the background. */
final class LessonSheets {
    private static final String ENDING = ".html";

    private final ProjectDesk desk;
    private final Consumer<Path> written;
    private final Consumer<String> failed;

    /**
     * Makes it.
     *
     * @param written hears of each file
     * @param failed hears why one could not be written
     */
    LessonSheets(ProjectDesk desk, Consumer<Path> written, Consumer<String> failed) {
        this.desk = desk;
        this.written = written;
        this.failed = failed;
    }

    /** Returns the folder of sheets of the open project. */
    Optional<Path> folder() {
        return desk.session().map(ProjectSession::sheetsFolder);
    }

    /** Returns how the file of a sheet is called; names of files do not depend on the language. */
    static String fileName(Lesson lesson, LessonSheet.Kind kind) {
        return "lesson-" + lesson.id() + (kind == LessonSheet.Kind.SOLUTION ? "-solution" : "-exercise") + ENDING;
    }

    /** Writes a sheet for the present values; a file that is there is replaced. */
    void write(LessonRun run, LessonSheet.Kind kind, Path file) {
        Lesson lesson = run.lesson();
        Controls values = run.values();
        PaperSize paper = desk.session()
                .map(open -> open.project().sheet().layout().paper())
                .orElse(PaperSize.A4);
        desk.work()
                .start(
                        Texts.say("sheet.job", lesson.title()),
                        progress -> {
                            progress.stopIfCancelled();
                            Path folder = file.toAbsolutePath().getParent();
                            if (folder != null) {
                                Files.createDirectories(folder);
                            }
                            return WholeFiles.writeText(file, LessonSheet.html(lesson, values, kind, paper));
                        },
                        written,
                        failure -> failed.accept(
                                Texts.say("sheet.failed", file.getFileName(), String.valueOf(failure.getMessage()))));
    }
}
