// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.Arrays;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

/** Sentences about runs, which the log keeps in English and the technician reads in a language of their own. */
final class Sentences {
    private static final Messages TEXTS = Messages.of(Sentences.class);

    private Sentences() {}

    /**
     * Makes a sentence.
     *
     * @param arguments a plug-in stands for its kind and name, a double has the language's decimal mark, no number is grouped
     */
    static Said of(String key, Object... arguments) {
        return Said.of(TEXTS, key, Arrays.stream(arguments).map(Sentences::part).toArray());
    }

    /** Returns the text of a call of a bench, to stand in a sentence. */
    static Said call(String what) {
        return of("call." + what.replace(' ', '.'));
    }

    /** Returns a number with four significant digits. */
    static Said four(double value) {
        return Said.number("%.4g", value);
    }

    private static Object part(Object argument) {
        return argument instanceof Plugin<?, ?> plugin ? Said.of(plugin::title) : argument;
    }
}
