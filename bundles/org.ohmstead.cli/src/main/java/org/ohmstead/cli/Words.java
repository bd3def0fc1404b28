// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.Locale;
import java.util.ResourceBundle;
import org.ohmstead.units.text.Language;
import picocli.CommandLine.Help;
import picocli.CommandLine.Help.ColorScheme;
import picocli.CommandLine.Model.CommandSpec;

/**
 * What the words say of themselves, from {@code words.properties} (English) and {@code words_de.properties} (German).
 *
 * <p>An option names its text by {@code descriptionKey}, as only then its default value is filled in; a word names its own as
 * <code>${bundle:key}</code>.
 */
final class Words {
    private static final String NAME = "org.ohmstead.cli.words";

    /** English is asked for by name on machines that speak German, so the machine's language must not step in. */
    private static final ResourceBundle.Control EXACT =
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);

    private Words() {}

    /** Returns the texts in the language that is spoken now. */
    static ResourceBundle spoken() {
        return in(Language.current());
    }

    /** Returns the texts in a language. */
    static ResourceBundle in(Locale language) {
        return ResourceBundle.getBundle(NAME, language, Words.class.getClassLoader(), EXACT);
    }

    /** Returns the help of a word. Only here are the texts read, so that a word which is just run does not wait for them. */
    static Help help(CommandSpec word, ColorScheme colours) {
        word.resourceBundle(spoken());
        return new Help(word, colours);
    }
}
