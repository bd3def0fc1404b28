// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonFiles;
import org.ohmstead.lessons.LessonFolder;
import org.ohmstead.lessons.LessonProvider;
import org.ohmstead.lessons.Lessons;

/**
 * The lessons there are now: those that Ohmstead brings, those of modules, those that a trainer described in the project's folder.
 *
 * @param lessons in the order in which they are shown
 * @param problems what was wrong with others, a whole sentence each
 */
record LessonLibrary(List<Lesson> lessons, List<String> problems) {
    LessonLibrary {
        lessons = List.copyOf(lessons);
        problems = List.copyOf(problems);
    }

    /**
     * Reads them all; on any thread.
     *
     * @param locale the language, and the form of numbers
     * @param providers what modules registered
     * @param project the folder of the open project, or empty
     */
    static LessonLibrary read(Locale locale, List<LessonProvider> providers, Optional<Path> project) {
        List<Lesson> lessons = new ArrayList<>(Lessons.builtIn(locale));
        List<String> problems = new ArrayList<>();
        for (LessonProvider provider : providers) {
            addAllOf(provider, locale, lessons, problems);
        }
        if (project.isPresent()) {
            LessonFolder described = LessonFiles.readFolder(project.get().resolve(LessonFiles.FOLDER), lessons);
            lessons.addAll(described.lessons());
            problems.addAll(described.problems());
        }
        return new LessonLibrary(lessons, problems);
    }

    /** A module that fails does not keep the others away; one that takes a name that is taken is passed over. */
    private static void addAllOf(LessonProvider provider, Locale locale, List<Lesson> lessons, List<String> problems) {
        FutureTask<List<Lesson>> asked = new FutureTask<>(() -> provider.lessons(locale));
        asked.run();
        try {
            for (Lesson lesson : asked.get()) {
                if (Lessons.find(lessons, lesson.id()).isEmpty()) {
                    lessons.add(lesson);
                }
            }
        } catch (ExecutionException failure) {
            problems.add(Texts.say(
                    "problem.module",
                    provider.getClass().getName(),
                    String.valueOf(failure.getCause().getMessage())));
        } catch (InterruptedException cancelled) {
            Thread.currentThread().interrupt();
        }
    }
}
