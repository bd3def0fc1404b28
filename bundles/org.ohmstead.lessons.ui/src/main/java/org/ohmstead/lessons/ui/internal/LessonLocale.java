// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.text.DecimalFormatSymbols;
import java.util.Locale;
import org.ohmstead.workbench.look.Numbers;

/**
 * The locale that lessons are made with: the language spoken, with a country whose decimal sign is the one that the user chose where the
 * language's own is the other.
 */
final class LessonLocale {
    private static final String POINT_IN_GERMAN = "CH";
    private static final String COMMA_IN_ENGLISH = "DE";

    private LessonLocale() {}

    static Locale now() {
        return of(Texts.locale(), Numbers.decimalComma());
    }

    static Locale of(Locale spoken, boolean decimalComma) {
        boolean comma = DecimalFormatSymbols.getInstance(spoken).getDecimalSeparator() == ',';
        if (comma == decimalComma) {
            return spoken;
        }
        return new Locale.Builder()
                .setLanguage(spoken.getLanguage())
                .setRegion(decimalComma ? COMMA_IN_ENGLISH : POINT_IN_GERMAN)
                .build();
    }
}
