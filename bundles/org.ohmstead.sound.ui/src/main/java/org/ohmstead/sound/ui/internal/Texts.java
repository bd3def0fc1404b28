// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sound.ui.internal;

import java.util.Locale;
import org.ohmstead.units.text.Messages;

/** The texts of the view in the language spoken now. */
final class Texts {
    private static final Messages TEXTS = Messages.of(Texts.class);

    private Texts() {}

    static String say(String key, Object... arguments) {
        return TEXTS.text(key, arguments);
    }

    static Locale locale() {
        return TEXTS.locale();
    }
}
