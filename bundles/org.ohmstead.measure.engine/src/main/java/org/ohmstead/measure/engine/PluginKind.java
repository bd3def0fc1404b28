// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

/** The kinds of plug-ins. */
public enum PluginKind {
    /** A procedure. */
    MEASUREMENT("measurement"),
    /** Access to a bench. */
    DRIVER("bench driver"),
    /** A check before a step. */
    PRECAUTION("precaution");

    private final String words;

    PluginKind(String words) {
        this.words = words;
    }

    /** Returns what a person calls it. */
    public String words() {
        return words;
    }
}
