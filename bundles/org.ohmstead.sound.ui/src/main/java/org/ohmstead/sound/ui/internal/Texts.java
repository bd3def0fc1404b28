// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sound.ui.internal;

import java.util.Locale;
import org.ohmstead.units.text.Messages;

/** The texts of the view in the language spoken now. */
final class Texts {
    private Texts() {}

    static String say(String key, Object... arguments) {
        return Messages.of(Texts.class).text(key, arguments);
    }

    static Locale locale() {
        return Messages.of(Texts.class).locale();
    }
}
