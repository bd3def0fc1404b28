// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.command;

import java.util.Optional;

/** The texts of the menu entries that name an edit. */
final class EditTexts {
    private EditTexts() {}

    /** Returns "&amp;Undo Set rating power", or only the verb when there is no edit. */
    static String of(String verb, Optional<String> editName) {
        return "&" + verb + editName.map(name -> " " + name.replace("&", "&&")).orElse("");
    }
}
