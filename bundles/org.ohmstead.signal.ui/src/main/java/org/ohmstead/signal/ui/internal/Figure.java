// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.util.List;

/**
 * One row of the table of figures.
 *
 * @param name what it is
 * @param unit its unit; empty where there is none
 * @param values one text for each channel; empty where there is no figure
 * @param definition how it is defined, as sentences
 * @param uncertainties one sentence for each channel; empty where none is known
 */
public record Figure(String name, String unit, List<String> values, String definition, List<String> uncertainties) {
    public Figure {
        values = List.copyOf(values);
        uncertainties = List.copyOf(uncertainties);
    }

    /** Returns the caption with the unit. */
    String caption() {
        return unit.isEmpty() ? name : name + " (" + unit + ")";
    }

    /** Returns what is told of a channel's figure on hover: what it is, how sure it is. */
    String explanation(int channel) {
        String sure = channel >= 0 && channel < uncertainties.size() ? uncertainties.get(channel) : "";
        return sure.isEmpty() ? definition : definition + "\n" + sure;
    }
}
