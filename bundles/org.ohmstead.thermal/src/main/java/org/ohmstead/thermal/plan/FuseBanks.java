// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.List;
import java.util.Optional;
import org.ohmstead.model.Fuse;
import org.ohmstead.model.Project;
import org.ohmstead.thermal.FuseBank;
import org.ohmstead.thermal.FuseKind;

/** The fuses of an amplifier as a bank. */
final class FuseBanks {
    private FuseBanks() {}

    /** Returns the bank; empty without fuses, or when they are not alike or of no kind that there is a table for. */
    static Optional<FuseBank> of(Project project) {
        List<Fuse> fuses = project.amplifier().fuses();
        if (fuses.isEmpty()) {
            return Optional.empty();
        }
        Fuse first = fuses.get(0);
        boolean alike = fuses.stream()
                .allMatch(fuse -> fuse.style().equals(first.style()) && fuse.ratedAmps() == first.ratedAmps());
        return alike
                ? FuseKind.of(first.style()).map(kind -> new FuseBank(kind, first.ratedAmps(), fuses.size()))
                : Optional.empty();
    }
}
