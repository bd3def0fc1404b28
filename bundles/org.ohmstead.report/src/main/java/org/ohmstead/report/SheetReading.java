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
 * @param voidReason why it was voided; empty when it was not
 * @param setAsideReason why the project leaves it out of curves and verdicts though it is valid; empty when it does not
 */
public record SheetReading(
        String entryId, Reading reading, Optional<String> voidReason, Optional<String> setAsideReason) {
    /** Checks that nothing is missing. */
    public SheetReading {
        if (entryId.isBlank()) {
            throw new IllegalArgumentException("entryId is blank; it must name an entry of the log");
        }
        Objects.requireNonNull(reading, "reading");
        Objects.requireNonNull(voidReason, "voidReason");
        Objects.requireNonNull(setAsideReason, "setAsideReason");
    }

    /** Makes a reading that is not set aside. */
    public SheetReading(String entryId, Reading reading, Optional<String> voidReason) {
        this(entryId, reading, voidReason, Optional.empty());
    }

    /** Returns whether the reading stands: it was neither voided nor set aside. */
    public boolean stands() {
        return voidReason.isEmpty() && setAsideReason.isEmpty();
    }
}
