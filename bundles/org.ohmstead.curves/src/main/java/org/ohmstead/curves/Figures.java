// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import java.util.Locale;

/** Numbers in sentences, with a decimal point; who shows a sentence puts the reader's decimal sign there. */
final class Figures {
    private Figures() {}

    static String of(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }
}
