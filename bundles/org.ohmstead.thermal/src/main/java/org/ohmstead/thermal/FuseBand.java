// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.OptionalDouble;
import org.ohmstead.units.text.Messages;

/**
 * One row of a fuse table: when a fuse opens with a current.
 *
 * @param currentRatio current over rating, above 1
 * @param earliestSeconds it must hold so long; empty when the source does not say
 * @param latestSeconds it must have opened by then; empty when the source does not say, or when it need never open
 * @param provenance how far the row can be trusted
 * @param source where it comes from
 */
public record FuseBand(
        double currentRatio,
        OptionalDouble earliestSeconds,
        OptionalDouble latestSeconds,
        FuseProvenance provenance,
        String source) {
    private static final Messages TEXTS = Messages.of(FuseBand.class);

    public FuseBand {
        Checks.within(currentRatio, 1, 1000, "currentRatio");
        Checks.present(earliestSeconds, "earliestSeconds")
                .ifPresent(value -> Checks.positive(value, "earliestSeconds"));
        Checks.present(latestSeconds, "latestSeconds").ifPresent(value -> Checks.positive(value, "latestSeconds"));
        Checks.present(provenance, "provenance");
        Checks.named(source, "source");
        if (earliestSeconds.isPresent()
                && latestSeconds.isPresent()
                && latestSeconds.getAsDouble() < earliestSeconds.getAsDouble()) {
            throw new IllegalArgumentException("latestSeconds is " + latestSeconds.getAsDouble()
                    + "; it must be at least earliestSeconds, which is " + earliestSeconds.getAsDouble());
        }
    }

    /** Returns the source with the words about its provenance, to be printed beside the row. */
    public String citation() {
        return TEXTS.text("fuse.citation", source, provenance.words());
    }
}
