// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

import java.time.LocalDate;
import java.util.Optional;
import org.ohmstead.units.text.Messages;

/** A day, typed as year-month-day; may be left empty unless a check says otherwise. */
public final class DateField extends EntryField<Optional<LocalDate>> {
    private static final Messages TEXTS = Messages.of(DateField.class);

    /** Adds the field to a section. */
    public DateField(FormSection section, String id, String label) {
        super(section, id, label, "", TextValue.optionalDate(), Shape.WORD);
        setHint(TEXTS.text("date.hint"));
    }
}
