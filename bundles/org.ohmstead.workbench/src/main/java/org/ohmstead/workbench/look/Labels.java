// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.look;

import java.util.Locale;
import org.ohmstead.units.text.Messages;

/** Labels and headers where they stand within a sentence. */
public final class Labels {
    private static final Messages TEXTS = Messages.of(Labels.class);

    private Labels() {}

    /** Returns a label as it stands within a sentence: in small letters, unless the language gives nouns a capital. */
    public static String inSentence(String label) {
        return TEXTS.text("label.small").equals("yes") ? label.toLowerCase(Locale.ROOT) : label;
    }
}
