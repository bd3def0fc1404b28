// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

/**
 * A plug-in that may be called.
 *
 * @param kind what it is
 * @param id which
 * @param name what a person calls it, and what the log does
 * @param version its version; empty for a precaution
 * @param instance the object
 * @param info its information; the id of a precaution
 */
record Plugin<T, I>(PluginKind kind, String id, Said name, String version, T instance, I info) {
    private static final Messages TEXTS = Messages.of(Plugin.class);

    /** Returns its kind and name in the language spoken now, to begin a sentence. */
    String title() {
        return kind.named(TEXTS.text("title", name.text(), id));
    }

    String key() {
        return kind.name() + " " + id;
    }
}
