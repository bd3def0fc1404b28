// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import org.ohmstead.units.text.Messages;

/** Makes the problems of a project in the language of the user. */
final class Problems {
    private static final Messages TEXTS = Messages.of(Problems.class);

    private Problems() {}

    /**
     * Returns a problem.
     *
     * @param severity how much it matters
     * @param where the JSON path of what it is about
     * @param key the name of the sentence that says what is wrong; the remedy's is the same with ".remedy" behind it
     * @param arguments what the first sentence needs
     */
    static Problem of(Severity severity, String where, String key, Object... arguments) {
        return new Problem(severity, where, TEXTS.text(key, arguments), TEXTS.text(key + ".remedy"));
    }

    /** Returns a number in a format of {@link String#format}, with the decimal mark of the language. */
    static String figure(String format, double value) {
        return String.format(TEXTS.locale(), format, value);
    }
}
