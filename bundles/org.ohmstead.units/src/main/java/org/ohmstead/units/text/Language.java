// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units.text;

import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * The languages that Ohmstead speaks, and which of them is spoken now.
 *
 * <p>The system property {@value #PROPERTY} chooses ("en", "de", or with a country, "de-AT"); without it the language of the
 * machine is taken when Ohmstead speaks it, and English when it does not. Files that programs read never depend on it.
 */
public final class Language {
    /** The name of the system property that chooses the language. */
    public static final String PROPERTY = "ohmstead.language";

    /** What Ohmstead speaks, English first. */
    public static final List<Locale> SPOKEN = List.of(Locale.ENGLISH, Locale.GERMAN);

    private Language() {}

    /** Returns the locale for texts and for the form of numbers that people read, with a country when one is known. */
    public static Locale current() {
        return choose(System.getProperty(PROPERTY), Locale.getDefault());
    }

    /**
     * Returns the locale that a wish and a machine lead to.
     *
     * @param wish a language tag such as "de" or "de-CH", or null or blank for none
     * @param machine the locale of the machine
     * @return the wish when it names a spoken language, else the machine's when that is spoken, else English
     */
    public static Locale choose(String wish, Locale machine) {
        Objects.requireNonNull(machine, "machine");
        if (wish != null && !wish.isBlank()) {
            Locale wished = Locale.forLanguageTag(wish.strip().replace('_', '-'));
            return isSpoken(wished) ? wished : Locale.ENGLISH;
        }
        return isSpoken(machine) ? machine : Locale.ENGLISH;
    }

    private static boolean isSpoken(Locale locale) {
        return SPOKEN.stream().anyMatch(spoken -> spoken.getLanguage().equals(locale.getLanguage()));
    }
}
