// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.internal;

import org.ohmstead.lessons.LessonException;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

/** What is wrong with descriptions and with values for controls, in the language spoken now. */
public final class Faults {
    private static final Messages TEXTS = Messages.of(Faults.class);

    private Faults() {}

    /** Returns a sentence; it stands under "wrong." in the texts. */
    public static String say(String key, Object... arguments) {
        return Said.of(TEXTS, "wrong." + key, arguments).shown();
    }

    /** Returns a failure. */
    public static LessonException of(String key, Object... arguments) {
        return new LessonException(say(key, arguments));
    }

    /** Returns a failure with what led to it. */
    public static LessonException because(Exception cause, String key, Object... arguments) {
        return new LessonException(say(key, arguments), cause);
    }
}
