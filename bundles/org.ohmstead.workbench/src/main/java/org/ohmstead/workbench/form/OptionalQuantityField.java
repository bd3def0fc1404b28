// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

import java.util.OptionalDouble;

/** A quantity that may be left empty; the value is in the plain SI unit. */
public final class OptionalQuantityField extends EntryField<OptionalDouble> {
    /** Adds the field to a section; a bare number is in the measure's unit. */
    public OptionalQuantityField(FormSection section, String id, String label, Measure measure) {
        super(section, id, label, measure.symbol(), TextValue.optionalQuantity(measure), Shape.NUMBER);
    }
}
