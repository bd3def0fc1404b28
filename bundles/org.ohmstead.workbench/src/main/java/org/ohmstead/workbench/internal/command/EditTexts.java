// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.command;

import java.util.Optional;
import org.ohmstead.units.text.Messages;

/** The texts of the menu entries that name an edit. */
final class EditTexts {
    private static final Messages TEXTS = Messages.of(EditTexts.class);

    private EditTexts() {}

    /** Returns "&amp;Undo Set rating power", or only the verb when there is no edit. */
    static String undo(Optional<String> editName) {
        return of("undo", editName);
    }

    /** Returns "&amp;Redo Set rating power", or only the verb when there is no edit. */
    static String redo(Optional<String> editName) {
        return of("redo", editName);
    }

    private static String of(String verb, Optional<String> editName) {
        return editName.map(name -> TEXTS.text(verb + ".edit", name.replace("&", "&&")))
                .orElseGet(() -> TEXTS.text(verb + ".none"));
    }
}
