// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import java.util.List;
import java.util.Locale;

/** The lessons in English, for tests. */
final class BuiltIn {
    static final List<Lesson> LESSONS = Lessons.builtIn(Locale.ENGLISH);

    private BuiltIn() {}

    static Lesson lesson(String id) {
        return Lessons.find(LESSONS, id).orElseThrow();
    }

    /** Returns what a lesson shows with some values changed, each written as "id=value". */
    static LessonResult at(String lessonId, String... settings) {
        Lesson lesson = lesson(lessonId);
        return lesson.at(set(lesson, settings));
    }

    static Controls set(Lesson lesson, String... settings) {
        Controls values = lesson.start();
        for (String setting : settings) {
            String[] parts = setting.split("=", 2);
            try {
                values = values.withText(parts[0], parts[1]);
            } catch (LessonException e) {
                throw new IllegalArgumentException(setting, e);
            }
        }
        return values;
    }

    static double figure(LessonResult result, String id) {
        return result.figure(id).value();
    }
}
