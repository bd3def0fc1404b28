// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

/** A ratio, written in percent: "1 %" or "1" is the value 0.01. */
public final class PercentField extends EntryField<Double> {
    /** Adds the field to a section. */
    public PercentField(FormSection section, String id, String label) {
        super(section, id, label, "%", TextValue.quantity(Measure.percentOfOne()), Shape.NUMBER);
    }
}
