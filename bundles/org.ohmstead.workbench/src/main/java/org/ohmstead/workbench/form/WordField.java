// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

/** A short text that must not be empty, such as an abbreviation; spaces at its ends are dropped. */
public final class WordField extends EntryField<String> {
    /** Adds the field to a section. */
    public WordField(FormSection section, String id, String label) {
        super(section, id, label, "", TextValue.requiredText(), Shape.WORD);
    }
}
