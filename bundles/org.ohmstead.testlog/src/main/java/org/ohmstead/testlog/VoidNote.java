// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.time.Instant;
import java.util.Objects;

/**
 * Says that an entry does not count, and why.
 *
 * @param voidId id of the entry that says so
 * @param targetId id of the entry that does not count
 * @param reason why, not blank
 * @param who decided it; may be empty
 * @param recordedAt when it was decided
 */
public record VoidNote(String voidId, String targetId, String reason, String who, Instant recordedAt) {
    public VoidNote {
        Objects.requireNonNull(voidId, "voidId");
        Objects.requireNonNull(targetId, "targetId");
        if (reason.isBlank()) {
            throw new IllegalArgumentException("reason is blank; it needs a text");
        }
        Objects.requireNonNull(who, "who");
        Objects.requireNonNull(recordedAt, "recordedAt");
    }
}
