// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonSheet;
import org.ohmstead.lessons.Lessons;
import org.ohmstead.workbench.look.Ids;

/** Where lessons come from and where their sheets go. */
class LessonsAroundTest {
    @TempDir
    Path folder;

    private Stage stage;
    private LessonComposite view;

    @BeforeEach
    void open() throws Exception {
        stage = new Stage(folder);
    }

    @AfterEach
    void close() {
        stage.close();
    }

    private LessonRun begin(String id) {
        view = stage.lessons();
        stage.choose(view, id);
        return view.run().orElseThrow();
    }

    @Test
    void sheetsAreWrittenIntoTheProjectAndIntoAFile() throws Exception {
        stage.open();
        LessonRun run = begin("clipping");
        run.set("drive", 6);
        LessonSheets sheets = new LessonSheets(stage.desk, file -> stage.opened.add(file), sentence -> {
            throw new AssertionError(sentence);
        });
        for (LessonSheet.Kind kind : LessonSheet.Kind.values()) {
            Path file = sheets.folder().orElseThrow().resolve(LessonSheets.fileName(run.lesson(), kind));
            sheets.write(run, kind, file);
            stage.until("it is written", () -> stage.opened.contains(file));
        }
        String exercise = Files.readString(folder.resolve("sheets/lesson-clipping-exercise.html"));
        String solution = Files.readString(folder.resolve("sheets/lesson-clipping-solution.html"));
        assertTrue(exercise.contains("6.00 dB") && solution.contains("6.00 dB"));
        assertFalse(exercise.contains("Solution for the trainer"));
        assertTrue(solution.contains("Solution for the trainer"));
    }

    @Test
    void aSheetThatCannotBeWrittenIsSaid() throws Exception {
        LessonRun run = begin("clipping");
        Path blocked = Files.writeString(folder.resolve("file"), "no folder");
        List<String> said = new ArrayList<>();
        new LessonSheets(stage.desk, file -> {}, said::add)
                .write(run, LessonSheet.Kind.EXERCISE, blocked.resolve("a.html"));
        stage.until("it failed", () -> !said.isEmpty());
        assertTrue(said.get(0).contains("a.html") && said.get(0).contains("could not be written"), said.get(0));
    }

    @Test
    void aProjectsOwnLessonAppearsAndABrokenOneIsNamed() throws Exception {
        Path lessons = Files.createDirectory(folder.resolve("lessons"));
        Files.writeString(
                lessons.resolve("ours.properties"),
                "lesson = our-subwoofer\n"
                        + "model = load-and-power\n"
                        + "title = In our workshop\n"
                        + "least.load = 1\n"
                        + "most.load = 4\n"
                        + "start.load = 2R2\n"
                        + "fixed.supply = 13.8 V\n");
        Files.writeString(lessons.resolve("broken.properties"), "lesson = broken\nmodel = load-and-powder\n");
        view = stage.lessons();
        stage.ready(view, "load-and-power");
        assertFalse(view.lessonIds().contains("our-subwoofer"));
        stage.open();
        stage.until("the project's lesson is there", () -> view.lessonIds().contains("our-subwoofer"));
        String problem = stage.label("lessons.problem");
        assertTrue(problem.contains("broken.properties") && problem.contains("model"), problem);
        stage.choose(view, "our-subwoofer");
        assertEquals("In our workshop", stage.label("lesson.title"));
        assertEquals(
                "2.20 \u03a9",
                stage.find("lesson.control.load.value", Text.class).getText());
        assertFalse(Ids.exists(stage.shell, "lesson.control.supply"));
    }

    @Test
    void aModelThatFailsIsNamed() {
        Lesson base = Lessons.builtIn().get(0);
        Lesson broken = new Lesson(
                "broken",
                base.locale(),
                "Broken",
                base.idea(),
                base.explanation(),
                base.formulas(),
                base.controls(),
                base.prediction(),
                base.sources(),
                base.cautions(),
                values -> {
                    throw new IllegalStateException("divided by nothing");
                });
        view = stage.lessons(locale -> List.of(broken));
        stage.choose(view, "broken");
        stage.until("it is said", () -> stage.shown("lesson.trouble"));
        assertTrue(stage.label("lesson.trouble").contains("Broken"), stage.label("lesson.trouble"));
        assertTrue(stage.label("lesson.trouble").contains("divided by nothing"), stage.label("lesson.trouble"));
    }

    @Test
    void theLessonChosenInAnEarlierSessionComesBack() {
        view = stage.lessons();
        view.choose("gain-overlap");
        stage.ready(view, "gain-overlap");
        assertEquals(Optional.of("gain-overlap"), view.chosen());
    }
}
