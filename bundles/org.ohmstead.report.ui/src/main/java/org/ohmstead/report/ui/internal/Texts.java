// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import org.ohmstead.units.text.Messages;

/** The texts of the view in the language spoken now. */
final class Texts {
    private static final Messages TEXTS = Messages.of(Texts.class);

    private Texts() {}

    static String say(String key, Object... arguments) {
        return TEXTS.text(key, arguments);
    }

    /** Returns the text for one, or that for any other count, with the count as its first argument. */
    static String counted(String key, long count, Object... others) {
        Object[] arguments = new Object[others.length + 1];
        arguments[0] = Long.toString(count);
        System.arraycopy(others, 0, arguments, 1, others.length);
        return TEXTS.text(key + (count == 1 ? ".one" : ".many"), arguments);
    }
}
