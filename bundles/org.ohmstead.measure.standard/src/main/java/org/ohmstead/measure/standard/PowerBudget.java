// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.List;
import org.ohmstead.model.CombinedParts;
import org.ohmstead.model.PartCorrelation;
import org.ohmstead.model.UncertaintyPart;

/**
 * The uncertainty of a power in its parts.
 *
 * @param parts where it comes from
 * @param correlations which of them move together
 * @param notes what was assumed, in whole sentences
 */
public record PowerBudget(List<UncertaintyPart> parts, List<PartCorrelation> correlations, List<String> notes) {
    /** Copies the lists. */
    public PowerBudget {
        parts = List.copyOf(parts);
        correlations = List.copyOf(correlations);
        notes = List.copyOf(notes);
    }

    /** Returns the combined standard uncertainty in watts, with the correlations (GUM 5.2.2). */
    public double combinedWatts() {
        return new CombinedParts(parts, correlations).watts();
    }
}
