// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import org.ohmstead.units.text.Messages;

/** The texts of the capture view in the language spoken now. */
public final class Texts {
    private static final Messages TEXTS = Messages.of(Texts.class);

    private Texts() {}

    /** Returns a text with its arguments filled in. */
    public static String say(String key, Object... arguments) {
        return TEXTS.text(key, arguments);
    }
}
