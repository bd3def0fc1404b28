// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.OptionalDouble;

/** When a fuse of a kind opens with a multiple of its rated current. */
public sealed interface FuseOpening {
    /**
     * Between these times.
     *
     * @param earliestSeconds it may open from then on; empty when the table does not say
     * @param latestSeconds it has opened by then; empty when the table does not say, or when it need never open
     * @param extrapolated whether the current is above those of the table, so that I^2 t, or the last row, speaks for
     *     it
     * @param citation where the times come from and how far they can be trusted, to be printed beside them
     */
    record Within(OptionalDouble earliestSeconds, OptionalDouble latestSeconds, boolean extrapolated, String citation)
            implements FuseOpening {
        public Within {
            Checks.present(earliestSeconds, "earliestSeconds");
            Checks.present(latestSeconds, "latestSeconds");
            Checks.named(citation, "citation");
        }
    }

    /**
     * Never within the table: the current is below its lowest.
     *
     * @param lowestRatio the lowest current of the table over the rating
     * @param citation where the table comes from
     */
    record NotInTable(double lowestRatio, String citation) implements FuseOpening {
        public NotInTable {
            Checks.positive(lowestRatio, "lowestRatio");
            Checks.named(citation, "citation");
        }
    }
}
