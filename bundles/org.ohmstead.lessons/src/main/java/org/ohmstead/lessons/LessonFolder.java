// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import java.util.List;

/**
 * What a folder of descriptions brought.
 *
 * @param lessons those that could be read, in the order of their files' names
 * @param problems what was wrong with the others, a whole sentence each with the name of the file
 */
public record LessonFolder(List<Lesson> lessons, List<String> problems) {
    /** Copies the lists. */
    public LessonFolder {
        lessons = List.copyOf(lessons);
        problems = List.copyOf(problems);
    }
}
