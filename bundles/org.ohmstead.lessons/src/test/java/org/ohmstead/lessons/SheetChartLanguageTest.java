// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.PaperSize;

/** Charts speak the language of their lesson, whatever the language of the machine is. */
class SheetChartLanguageTest {
    private static final Pattern WITH_POINT = Pattern.compile(">\\d+\\.\\d+</text>");
    private static final Pattern WITH_COMMA = Pattern.compile(">\\d+,\\d+</text>");

    private static int count(Locale locale, Pattern pattern) {
        return Lessons.builtIn(locale).stream()
                .map(lesson -> LessonSheet.html(lesson, lesson.start(), LessonSheet.Kind.SOLUTION, PaperSize.A4))
                .mapToInt(page -> pattern.matcher(page).results().toList().size())
                .sum();
    }

    @Test
    void numbersAlongTheAxesHaveTheDecimalSignOfTheLesson() {
        int numbers = count(Locale.ENGLISH, WITH_POINT);
        assertTrue(numbers >= 10, "numbers with a point: " + numbers);
        assertEquals(List.of(0, 0), List.of(count(Locale.ENGLISH, WITH_COMMA), count(Locale.GERMAN, WITH_POINT)));
        assertTrue(count(Locale.GERMAN, WITH_COMMA) >= 10);
    }
}
