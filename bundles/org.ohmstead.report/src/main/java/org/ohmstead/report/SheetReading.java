// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import java.util.Objects;
import java.util.Optional;
import org.ohmstead.model.Reading;

/**
 * A reading as the log holds it.
 *
 * @param entryId id of the log's entry, not blank
 * @param reading the reading
 * @param voidReason why it was voided; empty when it stands
 */
public record SheetReading(String entryId, Reading reading, Optional<String> voidReason) {
    /** Checks that nothing is missing. */
    public SheetReading {
        if (entryId.isBlank()) {
            throw new IllegalArgumentException("entryId is blank; it must name an entry of the log");
        }
        Objects.requireNonNull(reading, "reading");
        Objects.requireNonNull(voidReason, "voidReason");
    }

    /** Returns whether the reading stands, that is, was not voided. */
    public boolean stands() {
        return voidReason.isEmpty();
    }
}
