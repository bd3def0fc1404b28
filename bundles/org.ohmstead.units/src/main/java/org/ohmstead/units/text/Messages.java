// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units.text;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.Objects;
import java.util.ResourceBundle;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

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

    private final Class<?> owner;
    private final Supplier<Locale> spoken;
    private final Map<Locale, ResourceBundle> texts = new ConcurrentHashMap<>();
    /** What takes no argument, by language: a table that is sorted asks for the same few words for each of its rows. */
    private final Map<Locale, Map<String, String>> said = new ConcurrentHashMap<>();

    private Messages(Class<?> owner, Supplier<Locale> spoken) {
        this.owner = Objects.requireNonNull(owner, "owner");
        this.spoken = spoken;
    }

    /**
     * Returns the texts of a class's package. Each is said in the {@linkplain Language#current() language spoken} when it is asked for,
     * so a class may keep them in a constant.
     *
     * @param owner any class of the package
     * @throws MissingResourceException if the package has no texts
     */
    public static Messages of(Class<?> owner) {
        return checked(new Messages(owner, Language::current));
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
        return checked(new Messages(owner, () -> locale));
    }

    private static Messages checked(Messages messages) {
        messages.texts(
                messages.locale()); // a package without texts is found out here and not where the first one is said
        return messages;
    }

    private ResourceBundle texts(Locale locale) {
        // The platform keeps them too, but takes ten times longer to find them again than a text takes to be made.
        return texts.computeIfAbsent(
                locale,
                language -> ResourceBundle.getBundle(
                        owner.getPackageName() + ".messages", language, owner.getClassLoader(), EXACT));
    }

    /** Returns the language of the texts, and the form of their numbers. */
    public Locale locale() {
        return spoken.get();
    }

    /**
     * Returns a text with its arguments filled in.
     *
     * @param key the text's name
     * @param arguments what stands for {0}, {1} and so on
     * @throws MissingResourceException if there is no such text
     */
    public String text(String key, Object... arguments) {
        Locale locale = locale();
        return arguments.length > 0
                ? made(locale, key, arguments)
                : said.computeIfAbsent(locale, language -> new ConcurrentHashMap<>())
                        .computeIfAbsent(key, wanted -> made(locale, wanted));
    }

    private String made(Locale locale, String key, Object... arguments) {
        return new MessageFormat(texts(locale).getString(key), locale).format(arguments);
    }

    /** Returns whether there is a text of this name. */
    public boolean has(String key) {
        return texts(locale()).containsKey(key);
    }
}
