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
 *
 * <p>What is made in another language than that, such as a sheet for a customer, is made within {@link #speaking}.
 */
public final class Language {
    /** The name of the system property that chooses the language. */
    public static final String PROPERTY = "ohmstead.language";

    /** What Ohmstead speaks, English first. */
    public static final List<Locale> SPOKEN = List.of(Locale.ENGLISH, Locale.GERMAN);

    private static final ThreadLocal<Locale> FOR_A_WHILE = new ThreadLocal<>();

    private Language() {}

    /**
     * Work that may fail.
     *
     * @param <T> what it gives
     * @param <E> how it fails
     */
    @FunctionalInterface
    public interface Work<T, E extends Exception> {
        /** Does the work. */
        T run() throws E;
    }

    /**
     * Does work in a language of its own: until it ends, {@link #current} gives that language on this thread, whichever bundle asks.
     *
     * @param locale the language
     * @param work what to do, on this thread
     * @return what the work gives
     * @throws E when the work fails
     */
    public static <T, E extends Exception> T speaking(Locale locale, Work<T, E> work) throws E {
        Objects.requireNonNull(locale, "locale");
        Locale before = FOR_A_WHILE.get();
        FOR_A_WHILE.set(locale);
        try {
            return work.run();
        } finally {
            if (before == null) {
                FOR_A_WHILE.remove();
            } else {
                FOR_A_WHILE.set(before);
            }
        }
    }

    /** Returns the locale for texts and for the form of numbers that people read, with a country when one is known. */
    public static Locale current() {
        Locale forAWhile = FOR_A_WHILE.get();
        return forAWhile != null ? forAWhile : choose(System.getProperty(PROPERTY), Locale.getDefault());
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
