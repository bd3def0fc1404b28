// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.ohmstead.lessons.internal.BuiltInLessons;
import org.ohmstead.units.text.Language;

/** The lessons that Ohmstead brings. */
public final class Lessons {
    private Lessons() {}

    /** Returns them in the language spoken now, in the order in which they build on one another. */
    public static List<Lesson> builtIn() {
        return builtIn(Language.current());
    }

    /** Returns them in a language, in English where Ohmstead does not speak it. */
    public static List<Lesson> builtIn(Locale locale) {
        return new BuiltInLessons().lessons(locale);
    }

    /** Returns the first lesson of an id. */
    public static Optional<Lesson> find(List<Lesson> lessons, String id) {
        return lessons.stream().filter(lesson -> lesson.id().equals(id)).findFirst();
    }
}
