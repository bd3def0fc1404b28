// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

/** A quantity that must be there; the value is in the plain SI unit. Takes "4R7", "13.8 V", "13,8" and the like. */
public final class QuantityField extends EntryField<Double> {
    /** Adds the field to a section; a bare number is in the measure's unit. */
    public QuantityField(FormSection section, String id, String label, Measure measure) {
        super(section, id, label, measure.symbol(), TextValue.quantity(measure), Shape.NUMBER);
    }
}
