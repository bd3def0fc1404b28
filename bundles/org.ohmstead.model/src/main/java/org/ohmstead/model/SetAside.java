// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * A reading of the log that is left out of curves and verdicts though it is valid, because somebody says so. It stays in the log and on
 * the sheet's list of what was left out; a reading that is wrong is voided there instead.
 *
 * @param entryId id of the reading's entry in the log
 * @param reason why it is left out, not blank
 */
public record SetAside(String entryId, String reason) {
    public SetAside {
        Checks.named(entryId, "entryId");
        Checks.named(reason, "reason");
    }

    /** Returns this with the entry of another reading. */
    public SetAside withEntryId(String newEntryId) {
        return new SetAside(newEntryId, reason);
    }

    /** Returns this with another reason. */
    public SetAside withReason(String newReason) {
        return new SetAside(entryId, newReason);
    }
}
