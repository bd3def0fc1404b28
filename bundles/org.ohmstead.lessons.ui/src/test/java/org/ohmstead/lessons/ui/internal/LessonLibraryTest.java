// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonProvider;
import org.ohmstead.lessons.Lessons;

class LessonLibraryTest {
    @TempDir
    Path folder;

    private static List<String> ids(LessonLibrary library) {
        return library.lessons().stream().map(Lesson::id).toList();
    }

    @Test
    void aModulesLessonsComeAfterOursAndThoseWithATakenNameNotAtAll() {
        Lesson ours = Lessons.builtIn(Locale.ENGLISH).get(0);
        Lesson own = named(ours, "own");
        LessonLibrary library =
                LessonLibrary.read(Locale.ENGLISH, List.of(locale -> List.of(ours, own)), Optional.empty());
        assertEquals(Lessons.builtIn().size() + 1, library.lessons().size());
        assertEquals("own", ids(library).get(library.lessons().size() - 1));
        assertEquals(List.of(), library.problems());
    }

    private static Lesson named(Lesson base, String id) {
        return new Lesson(
                id,
                base.locale(),
                base.title(),
                base.idea(),
                base.explanation(),
                base.formulas(),
                base.controls(),
                base.prediction(),
                base.sources(),
                base.cautions(),
                base.model());
    }

    @Test
    void aModuleThatFailsIsNamedAndTheOthersAreThere() {
        LessonProvider broken = locale -> {
            throw new IllegalStateException("no figures today");
        };
        LessonLibrary library = LessonLibrary.read(Locale.ENGLISH, List.of(broken), Optional.empty());
        assertEquals(Lessons.builtIn().size(), library.lessons().size());
        assertEquals(1, library.problems().size());
        assertTrue(
                library.problems().get(0).contains("no figures today"),
                library.problems().toString());
        assertTrue(library.problems().get(0).contains(LessonLibraryTest.class.getSimpleName()));
    }

    @Test
    void aProjectsLessonsAreReadAndABrokenOneIsNamedWithItsKey() throws Exception {
        Path lessons = Files.createDirectory(folder.resolve("lessons"));
        Files.writeString(lessons.resolve("good.properties"), "lesson = good\nmodel = clipping\ntitle = Ours\n");
        Files.writeString(lessons.resolve("bad.properties"), "lesson = bad\nmodel = clipping\nleast.drive = loud\n");
        LessonLibrary library = LessonLibrary.read(Locale.ENGLISH, List.of(), Optional.of(folder));
        assertTrue(ids(library).contains("good"));
        assertEquals(1, library.problems().size());
        assertTrue(
                library.problems().get(0).contains("bad.properties"),
                library.problems().toString());
        assertTrue(
                library.problems().get(0).contains("least.drive"),
                library.problems().toString());
    }
}
