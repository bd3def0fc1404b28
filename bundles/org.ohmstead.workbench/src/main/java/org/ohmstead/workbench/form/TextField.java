// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

/** A text of one line or several; spaces at its ends are dropped. */
public final class TextField extends EntryField<String> {
    /** Adds a field of one line to a section. */
    public TextField(FormSection section, String id, String label, boolean required) {
        this(section, id, label, required, false);
    }

    /**
     * Adds a field to a section.
     *
     * @param required whether an empty text is refused
     * @param lines whether the text may have several lines; Enter then breaks the line and leaving the field commits
     */
    public TextField(FormSection section, String id, String label, boolean required, boolean lines) {
        super(
                section,
                id,
                label,
                "",
                required ? TextValue.requiredText() : TextValue.text(),
                lines ? Shape.LINES : Shape.LINE);
    }
}
