// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import java.util.Locale;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

/** The sentences of this package in the language spoken now. */
final class Texts {
    private static final Messages TEXTS = Messages.of(Texts.class);

    private Texts() {}

    static String say(String key, Object... arguments) {
        return TEXTS.text(key, arguments);
    }

    static Said said(String key, Object... arguments) {
        return Said.of(() -> say(key, arguments));
    }

    static String sayIn(Locale locale, String key, Object... arguments) {
        return Messages.of(Texts.class, locale).text(key, arguments);
    }
}
