// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import org.ohmstead.testlog.ChainInfo;

/**
 * A chain of the shared log.
 *
 * @param info its id, its label (unique in the shared log and never given anew), the bench that began it, and how far it goes
 * @param parentHash hash of the entry that its first one continues: zeros, or of an entry of another chain when a copy of a project
 *     went its own way there
 * @param origin whose entries they are
 * @param createdAt when it was begun, by the server's clock
 * @param createdBy login that began it
 * @param closedBecause why it takes no more entries; empty when it does
 */
public record LabChain(
        ChainInfo info,
        String parentHash,
        ChainOrigin origin,
        Instant createdAt,
        String createdBy,
        Optional<String> closedBecause) {
    public LabChain {
        Objects.requireNonNull(info, "info");
        Objects.requireNonNull(parentHash, "parentHash");
        Objects.requireNonNull(origin, "origin");
        Objects.requireNonNull(createdAt, "createdAt");
        Objects.requireNonNull(createdBy, "createdBy");
        Objects.requireNonNull(closedBecause, "closedBecause");
    }

    /** Returns whether it parts from another chain instead of beginning by itself. */
    public boolean forked() {
        return info.firstSequence() > 1;
    }
}
