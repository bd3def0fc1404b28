// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.Lessons;

class LessonLocaleTest {
    @ParameterizedTest
    @CsvSource({
        "en, false, 14.4 V, Load",
        "en, true, '14,4 V', Load",
        "de, true, '14,4 V', Last",
        "de, false, 14.4 V, Last"
    })
    void theUsersDecimalSignGoesInEveryLanguage(String language, boolean comma, String supply, String load) {
        Locale locale = LessonLocale.of(Locale.forLanguageTag(language), comma);
        Lesson lesson = Lessons.find(Lessons.builtIn(locale), "load-and-power").orElseThrow();
        assertEquals(supply, lesson.start().text("supply", lesson.locale()));
        assertEquals(load, lesson.start().control("load").label());
    }

    @Test
    void aLocaleThatFitsStaysAsItIs() {
        for (Locale locale : List.of(Locale.UK, Locale.US, Locale.ENGLISH)) {
            assertEquals(locale, LessonLocale.of(locale, false));
        }
        assertEquals(Locale.GERMANY, LessonLocale.of(Locale.GERMANY, true));
    }
}
