// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import org.ohmstead.units.text.Messages;

/** The kinds of plug-ins. */
public enum PluginKind {
    /** A procedure. */
    MEASUREMENT("measurement"),
    /** Access to a bench. */
    DRIVER("bench driver"),
    /** A check before a step. */
    PRECAUTION("precaution");

    private static final Messages TEXTS = Messages.of(PluginKind.class);

    private final String loggedWords;

    PluginKind(String loggedWords) {
        this.loggedWords = loggedWords;
    }

    /** Returns what a person calls it. */
    public String words() {
        return TEXTS.text("kind." + name());
    }

    /** Returns what the names of threads call it, whatever the language of the user. */
    String loggedWords() {
        return loggedWords;
    }

    /** Returns it with a name behind it, to begin a sentence. */
    String named(String name) {
        return TEXTS.text("named." + name(), name);
    }
}
