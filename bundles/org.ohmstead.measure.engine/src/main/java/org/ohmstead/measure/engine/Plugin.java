// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import org.ohmstead.units.text.Messages;

/**
 * A plug-in that may be called.
 *
 * @param kind what it is
 * @param id which
 * @param name what a person calls it
 * @param version its version; empty for a precaution
 * @param instance the object
 * @param info its information; the id of a precaution
 */
record Plugin<T, I>(PluginKind kind, String id, String name, String version, T instance, I info) {
    private static final Messages TEXTS = Messages.of(Plugin.class);

    /** Returns its kind and name, to begin a sentence that the log may keep. */
    String title() {
        return "The " + kind.loggedWords() + " \"" + name + "\" (" + id + ")";
    }

    /** Returns its kind and name, to begin a sentence that is only shown. */
    String shownTitle() {
        return kind.named(TEXTS.text("title", name, id));
    }

    String key() {
        return kind.name() + " " + id;
    }
}
