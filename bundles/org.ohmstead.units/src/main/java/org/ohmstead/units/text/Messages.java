// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units.text;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.Objects;
import java.util.ResourceBundle;

/**
 * The texts of one package, from the files {@code messages.properties} (English) and {@code messages_de.properties} (German) that
 * lie beside its classes.
 *
 * <p>A text is a pattern of {@link MessageFormat}: "{0}" is the first argument, and an apostrophe is written twice. Numbers take the
 * form of the locale.
 */
public final class Messages {
    private static final ResourceBundle.Control EXACT =
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);

    private final ResourceBundle texts;
    private final Locale locale;

    private Messages(ResourceBundle texts, Locale locale) {
        this.texts = texts;
        this.locale = locale;
    }

    /**
     * Returns the texts of a class's package in the {@linkplain Language#current() language spoken now}.
     *
     * @param owner any class of the package
     * @throws MissingResourceException if the package has no texts
     */
    public static Messages of(Class<?> owner) {
        return of(owner, Language.current());
    }

    /**
     * Returns the texts of a class's package in one language; what a language lacks is said in English.
     *
     * @param owner any class of the package
     * @param locale the language, and the form of numbers
     * @throws MissingResourceException if the package has no texts
     */
    public static Messages of(Class<?> owner, Locale locale) {
        Objects.requireNonNull(locale, "locale");
        String name = owner.getPackageName() + ".messages";
        return new Messages(ResourceBundle.getBundle(name, locale, owner.getClassLoader(), EXACT), locale);
    }

    /** Returns the language of the texts, and the form of their numbers. */
    public Locale locale() {
        return locale;
    }

    /**
     * Returns a text with its arguments filled in.
     *
     * @param key the text's name
     * @param arguments what stands for {0}, {1} and so on
     * @throws MissingResourceException if there is no such text
     */
    public String text(String key, Object... arguments) {
        return new MessageFormat(texts.getString(key), locale).format(arguments);
    }

    /** Returns whether there is a text of this name. */
    public boolean has(String key) {
        return texts.containsKey(key);
    }
}
