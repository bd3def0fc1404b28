// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.SheetDesign;
import org.ohmstead.units.text.Language;

/** Charts speak the language of their sheet, whatever the language of the machine is. */
class SheetChartLanguageTest {
    private static final Pattern WITH_POINT = Pattern.compile(">\\d+\\.\\d+</text>");
    private static final Pattern WITH_COMMA = Pattern.compile(">\\d+,\\d+</text>");

    private static String page(SheetDesign design, Locale language) {
        ResultsSheet plain = SampleSheet.plain().build();
        return HtmlSheet.render(plain.withForm(plain.form().withDesign(design).withLanguage(language)));
    }

    private static List<String> found(Pattern pattern, String page) {
        return pattern.matcher(page).results().map(each -> each.group()).toList();
    }

    @Test
    void numbersAlongTheAxesHaveTheDecimalSignOfTheSheet() {
        String before = System.getProperty(Language.PROPERTY);
        try {
            for (String spoken : List.of("en", "de")) {
                System.setProperty(Language.PROPERTY, spoken);
                for (SheetDesign design : List.of(SheetDesign.BENCH, SheetDesign.FULL)) {
                    String english = page(design, Locale.ENGLISH);
                    String german = page(design, Locale.GERMAN);
                    assertFalse(found(WITH_POINT, english).isEmpty());
                    assertEquals(List.of(), found(WITH_COMMA, english));
                    assertTrue(found(WITH_COMMA, german).size() >= 2, "numbers with a comma");
                    assertEquals(List.of(), found(WITH_POINT, german));
                }
            }
        } finally {
            if (before == null) {
                System.clearProperty(Language.PROPERTY);
            } else {
                System.setProperty(Language.PROPERTY, before);
            }
        }
    }
}
