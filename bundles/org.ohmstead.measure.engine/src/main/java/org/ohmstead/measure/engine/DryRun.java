// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.List;

/**
 * A plan gone through without feeding anything.
 *
 * @param steps each item that is still to be done, in order
 */
public record DryRun(List<DryStep> steps) {
    public DryRun {
        steps = List.copyOf(steps);
    }

    /** Returns whether nothing is in the way of any. */
    public boolean mayRun() {
        return steps.stream().allMatch(DryStep::mayRun);
    }
}
