// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.Arrays;
import java.util.Locale;
import org.eclipse.equinox.app.IApplication;
import org.eclipse.equinox.app.IApplicationContext;
import org.ohmstead.units.text.Language;

/** The command line as an application of the framework. Its exit code is that of {@link Ohmstead#run}. */
public final class CommandLineApplication implements IApplication {
    /** System property with which whoever starts the application says that each word has a mark in front. */
    static final String WORDS = "ohmstead.words";

    private static final String MARK = "=";

    @Override
    public Object start(IApplicationContext context) {
        String[] arguments = (String[]) context.getArguments().get(IApplicationContext.APPLICATION_ARGS);
        boolean marked = "marked".equals(System.getProperty(WORDS));
        String[] words = words(arguments == null ? new String[0] : arguments, marked);
        System.setProperty(Language.PROPERTY, language(words, System.getProperty(Language.PROPERTY)));
        return Ohmstead.run(words, System.out, System.err);
    }

    /**
     * Returns the language for some words: English unless another one is asked for, whatever the machine speaks, since the words are
     * English themselves; and English always for what programs read.
     *
     * @param wish the language that is asked for; null or blank for none
     */
    static String language(String[] words, String wish) {
        boolean forPrograms =
                Arrays.stream(words).anyMatch(word -> word.equals("--json") || word.equals("--json=true"));
        boolean asked = wish != null && !wish.isBlank();
        return asked && !forPrograms ? wish : Locale.ENGLISH.getLanguage();
    }

    /** Returns the words without their marks, which keep the framework from taking a word for one of its own options. */
    static String[] words(String[] arguments, boolean marked) {
        return marked
                ? Arrays.stream(arguments)
                        .map(argument -> argument.startsWith(MARK) ? argument.substring(MARK.length()) : argument)
                        .toArray(String[]::new)
                : arguments;
    }

    @Override
    public void stop() {
        // Every word returns by itself; there is nothing to wind down.
    }
}
