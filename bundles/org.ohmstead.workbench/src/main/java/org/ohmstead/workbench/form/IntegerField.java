// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

/** A whole number between two bounds. */
public final class IntegerField extends EntryField<Integer> {
    /** Adds the field to a section; both bounds are allowed values. */
    public IntegerField(FormSection section, String id, String label, int lowest, int highest) {
        super(section, id, label, "", TextValue.integer(lowest, highest), Shape.NUMBER);
    }
}
