// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

/** What a log refuses, in the language spoken now and in English, since a run that fails for it is logged. */
public final class LogRefusals {
    private static final Messages TEXTS = Messages.of(LogRefusals.class);

    private LogRefusals() {}

    /** Returns a failure; its sentence stands under "refused." in the texts. */
    public static TestLogException of(String key, Object... arguments) {
        return because(null, key, arguments);
    }

    /** Returns a failure that something else caused. */
    public static TestLogException because(Exception cause, String key, Object... arguments) {
        return new TestLogException(Said.of(TEXTS, "refused." + key, arguments), cause);
    }

    /** Returns a few words on what is wrong with a row, to stand in a sentence. */
    public static String words(String key, Object... arguments) {
        return Said.of(TEXTS, "row." + key, arguments).text();
    }
}
