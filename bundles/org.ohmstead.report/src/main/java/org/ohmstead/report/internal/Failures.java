// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import org.ohmstead.units.text.Messages;

/** What is said when something fails, in the language spoken now; while a sheet is made, that is the sheet's own. */
public final class Failures {
    private static final Messages TEXTS = Messages.of(Failures.class);

    private Failures() {}

    /** Returns a text; numbers among the arguments must be texts already. */
    public static String say(String key, Object... arguments) {
        return TEXTS.text(key, arguments);
    }
}
