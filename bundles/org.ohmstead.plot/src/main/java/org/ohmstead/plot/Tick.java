// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

import java.util.Objects;

/**
 * One labelled place on an axis, for axes whose places are named rather than counted (a bar for each load, say).
 *
 * @param value the place, in the unit of the axis; finite
 * @param label what is written there; may be empty
 */
public record Tick(double value, String label) {
    /** Checks the parameters. */
    public Tick {
        Checks.finite("value", value);
        Objects.requireNonNull(label, "label");
    }
}
